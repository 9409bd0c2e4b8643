#include "report/markdown_text.h"

#include <cstddef>

#include "document/inert_text.h"

namespace grainside::report {
namespace {

// A backslash makes any punctuation plain (CommonMark, 2.4). ':' is among them because of "http:".
constexpr std::string_view kEscaped = "\\`*_{}[]()#+-!|<>~:$^=\"@";

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// "1." begins a list, "www." a link; a full stop elsewhere stays as it is, because text is read by people as well.
bool is_point_to_escape(std::string_view text, std::size_t at) {
    if (text[at] != '.') return false;
    const bool after_number = at > 0 && is_digit(text[at - 1]) && (at + 1 == text.size() || !is_digit(text[at + 1]));
    return after_number || (at >= 3 && (text.substr(at - 3, 3) == "www" || text.substr(at - 3, 3) == "WWW"));
}

}  // namespace

std::string markdown_text(std::string_view text) {
    const std::string printable = document::printable_text(text);
    std::string out;
    out.reserve(printable.size() + printable.size() / 8);
    for (std::size_t at = 0; at < printable.size(); ++at) {
        const char c = printable[at];
        if (c == '\n') {
            out += ' ';
        } else if (c == '&') {
            out += "&amp;";
        } else {
            if (kEscaped.find(c) != std::string_view::npos || is_point_to_escape(printable, at)) out += '\\';
            out += c;
        }
    }
    return out;
}

}  // namespace grainside::report
