// to_text: an issue as lines for people.
#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>

#include "document/inert_text.h"
#include "document/utf8.h"
#include "grainside/result.h"

namespace grainside {
inline namespace v0 {
namespace {

// A long line is shown as a window of this many bytes around the column.
constexpr std::size_t kWindowBytes = 140;
constexpr std::size_t kBytesBeforeColumn = 70;

struct WidthRange {
    char32_t first, last;
    std::size_t cells;
};
// The characters that do not take one terminal cell: combining marks and joiners none, East Asian wide ones two.
// Source: Unicode Standard Annex #11, its wide blocks in outline; a rare character outside moves the caret by a cell.
constexpr std::array kWidths = {
    WidthRange{0x0300, 0x036F, 0},   WidthRange{0x1100, 0x115F, 2}, WidthRange{0x200B, 0x200D, 0},
    WidthRange{0x20D0, 0x20F0, 0},   WidthRange{0x2E80, 0xA4CF, 2}, WidthRange{0xAC00, 0xD7A3, 2},
    WidthRange{0xF900, 0xFAFF, 2},   WidthRange{0xFE00, 0xFE0F, 0}, WidthRange{0xFE30, 0xFE6F, 2},
    WidthRange{0xFF00, 0xFF60, 2},   WidthRange{0xFFE0, 0xFFE6, 2}, WidthRange{0x1F300, 0x1FAFF, 2},
    WidthRange{0x20000, 0x3FFFD, 2},
};

std::size_t cells_of(char32_t point) {
    for (const WidthRange& range : kWidths) {
        if (point >= range.first && point <= range.last) return range.cells;
    }
    return 1;
}

bool continues_char(char c) {
    return (static_cast<unsigned char>(c) & 0xC0u) == 0x80;
}

std::size_t char_border_before(std::string_view text, std::size_t offset) {
    while (offset > 0 && offset < text.size() && continues_char(text[offset])) --offset;
    return offset;
}

std::string_view severity_name(Issue::Severity severity) {
    switch (severity) {
        case Issue::Severity::error:
            return "error";
        case Issue::Severity::warning:
            return "warning";
        case Issue::Severity::note:
            return "note";
    }
    return "error";
}

void append_excerpt(std::string& out, const Issue& issue) {
    const std::string line = document::inert_text(issue.excerpt);
    const std::size_t column = std::min<std::size_t>(issue.column == 0 ? 0 : issue.column - 1, line.size());
    std::size_t from = 0;
    std::size_t to = line.size();
    if (line.size() > kWindowBytes) {
        from = char_border_before(line, column > kBytesBeforeColumn ? column - kBytesBeforeColumn : 0);
        to = char_border_before(line, std::min(line.size(), from + kWindowBytes));
    }
    out += "  ";
    if (from > 0) out += "...";
    out.append(line, from, to - from);
    if (to < line.size()) out += "...";
    out += '\n';
    if (issue.column == 0) return;

    out += "  ";
    if (from > 0) out += "   ";
    const std::size_t caret = char_border_before(line, column);
    for (std::size_t at = from; at < caret;) {
        const document::DecodedChar decoded = document::decode_utf8(line, at);
        out.append(cells_of(decoded.point), ' ');
        at += decoded.length;
    }
    out += "^\n";
}

}  // namespace

std::string to_text(const Issue& issue) {
    std::string out;
    if (!issue.file.empty()) {
        out += document::inert_text(issue.file) + ':';
        if (issue.line != 0) {
            out += std::to_string(issue.line) + ':';
            if (issue.column != 0) out += std::to_string(issue.column) + ':';
        }
        out += ' ';
    }
    out += severity_name(issue.severity);
    out += ": " + document::inert_text(issue.message);
    if (!issue.code.empty()) out += " [" + document::inert_text(issue.code) + ']';
    out += '\n';
    if (!issue.excerpt.empty()) append_excerpt(out, issue);
    if (!issue.hint.empty()) out += "  hint: " + document::inert_text(issue.hint) + '\n';
    return out;
}

}  // namespace v0
}  // namespace grainside
