#include "report/plain_lines.h"

#include <algorithm>

#include "document/inert_text.h"
#include "document/utf8.h"
#include "report/cell_width.h"

namespace grainside::report {
namespace {

constexpr std::string_view kLeftOut = "...";
// Combining marks take no cell, so a line is bounded in bytes as well.
constexpr std::size_t kMaxBytesPerCell = 8;

std::string with_single_spaces(std::string_view text) {
    std::string out = document::inert_text(text);
    const auto both_spaces = [](char a, char b) { return a == ' ' && b == ' '; };
    out.erase(std::unique(out.begin(), out.end(), both_spaces), out.end());
    if (out.starts_with(' ')) out.erase(0, 1);
    if (out.ends_with(' ')) out.pop_back();
    return out;
}

// How many bytes of `text` fit into `cells`; at least one character, so that whoever calls gets on.
std::size_t fitting_bytes(std::string_view text, std::size_t cells) {
    std::size_t used = 0;
    for (std::size_t at = 0; at < text.size();) {
        const document::DecodedChar decoded = document::decode_utf8(text, at);
        used += cells_of(decoded.point);
        const bool full = used > cells || at + decoded.length > cells * kMaxBytesPerCell;
        if (full && at > 0) return at;
        at += decoded.length;
    }
    return text.size();
}

// Where the last `cells` of `text` begin.
std::size_t start_of_last(std::string_view text, std::size_t cells) {
    std::size_t start = text.size();
    std::size_t used = 0;
    while (start > 0) {
        std::size_t before = start - 1;
        while (before > 0 && (static_cast<unsigned char>(text[before]) & 0xC0U) == 0x80) --before;
        used += cells_of(document::decode_utf8(text, before).point);
        if (used > cells || text.size() - before > cells * kMaxBytesPerCell) break;
        start = before;
    }
    return start;
}

}  // namespace

std::string one_line(std::string_view text, std::size_t cells) {
    // What cannot be shown anyway need not be made inert: a word may have a million bytes.
    const std::size_t most = (cells + 1) * kMaxBytesPerCell;
    std::string line;
    if (text.size() > 2 * most) {
        line = with_single_spaces(text.substr(0, most)) + ' ' + with_single_spaces(text.substr(text.size() - most));
    } else {
        line = with_single_spaces(text);
        if (fitting_bytes(line, cells) == line.size()) return line;
    }
    const std::size_t shown = cells - kLeftOut.size();
    const std::size_t tail = start_of_last(line, shown / 3);
    line.replace(fitting_bytes(line, shown - shown / 3), std::string::npos,
                 std::string(kLeftOut).append(line, tail, std::string::npos));
    return line;
}

void append_wrapped(std::string& out, std::string_view text, std::size_t indent, std::size_t width) {
    const std::string words = with_single_spaces(text);
    const std::size_t room = width - indent;
    std::string_view rest = words;
    for (bool first = true; first || !rest.empty(); first = false) {
        if (!first) out.append(indent, ' ');
        std::size_t line = fitting_bytes(rest, room);
        std::size_t next = line;
        if (line < rest.size()) {
            // A space at the very end of the line counts too.
            const std::size_t space = rest.rfind(' ', line);
            if (space != std::string_view::npos && space > 0) {
                line = space;
                next = space + 1;
            }
        }
        out.append(rest.substr(0, line));
        out += '\n';
        rest.remove_prefix(next);
    }
}

}  // namespace grainside::report
