#include "report/roff_text.h"

#include <fmt/format.h>

#include <cstddef>
#include <cstdint>
#include <iterator>

#include "document/inert_text.h"
#include "document/utf8.h"

namespace grainside::report {
namespace {

// Characters that roff reads as commands, or prints as others than they are (groff_char(7)).
std::string_view escape_for(char32_t point) {
    switch (point) {
        case U'\\':
            return "\\e";
        case U'-':
            return "\\-";
        case U'\'':
            return "\\(aq";
        case U'"':
            return "\\(dq";
        case U'`':
            return "\\(ga";
        case U'^':
            return "\\(ha";
        case U'~':
            return "\\(ti";
        default:
            return {};
    }
}

// REQUIRES: `clean` is as document::printable_text gives it.
void append_escaped(std::string& out, std::string_view clean) {
    constexpr char32_t kLastOfAscii = 0x7E;
    for (std::size_t at = 0; at < clean.size();) {
        const document::DecodedChar decoded = document::decode_utf8(clean, at);
        at += decoded.length;
        const char32_t point = decoded.point == U'\n' ? U' ' : decoded.point;
        if (const std::string_view escape = escape_for(point); !escape.empty()) {
            out += escape;
        } else if (point <= kLastOfAscii) {
            out += static_cast<char>(point);
        } else {
            fmt::format_to(std::back_inserter(out), "\\[u{:04X}]", static_cast<std::uint32_t>(point));
        }
    }
}

}  // namespace

void append_roff_line(std::string& out, std::string_view text) {
    const std::string clean = document::printable_text(text);
    // A line that begins with a space breaks the paragraph. A tab or a carriage return is one by now.
    const std::size_t first = clean.find_first_not_of(" \n");
    if (first == std::string::npos) return;
    if (clean[first] == '.') out += "\\&";
    append_escaped(out, std::string_view(clean).substr(first));
    out += '\n';
}

void append_roff_argument(std::string& out, std::string_view text) {
    out += '"';
    append_escaped(out, document::printable_text(text));
    out += '"';
}

}  // namespace grainside::report
