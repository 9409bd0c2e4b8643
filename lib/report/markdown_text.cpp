#include "report/markdown_text.h"

#include <algorithm>
#include <cstddef>

#include "document/inert_text.h"

namespace grainside::report {
namespace {

// A backslash makes any punctuation plain (CommonMark, 2.4). No more of them than is needed: letters are read as they
// are, too.
constexpr std::string_view kEscaped = "\\`*[]<|~$";
constexpr std::string_view kEscapedAtBegin = "#>+-=:";

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// "1." and "1)" begin a list where nothing but the number stands before them.
bool ends_list_number(std::string_view line, std::size_t at) {
    if (line[at] != '.' && line[at] != ')') return false;
    if (at + 1 < line.size() && line[at + 1] != ' ') return false;
    return at > 0 && at <= 9 && std::all_of(line.begin(), line.begin() + static_cast<std::ptrdiff_t>(at), is_digit);
}

// Between letters or digits it emphasises nothing (CommonMark, 6.2).
bool emphasises(std::string_view line, std::size_t at) {
    const auto is_word = [&](std::size_t place) {
        const char c = line[place];
        return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    };
    return line[at] == '_' && (at == 0 || at + 1 == line.size() || !is_word(at - 1) || !is_word(at + 1));
}

// Addresses that a reader would turn into links: "http://", "www.".
bool makes_address(std::string_view line, std::size_t at) {
    if (line[at] == ':') return line.substr(at).starts_with("://");
    if (line[at] != '.' || at < 3) return false;
    const std::string_view before = line.substr(at - 3, 3);
    return std::all_of(before.begin(), before.end(), [](char c) { return c == 'w' || c == 'W'; });
}

}  // namespace

std::string markdown_text(std::string_view text, bool begins_line) {
    std::string printable = document::printable_text(text);
    std::replace(printable.begin(), printable.end(), '\n', ' ');
    std::string_view line = printable;
    // Four spaces would begin code.
    if (begins_line) line.remove_prefix(std::min(line.find_first_not_of(' '), line.size()));
    std::string out;
    out.reserve(line.size() + line.size() / 8);
    for (std::size_t at = 0; at < line.size(); ++at) {
        const char c = line[at];
        if (c == '&') {
            out += "&amp;";
            continue;
        }
        if (c == '@') {
            // No escape keeps a reader from making an address, or a call to a person, of what stands around it.
            out += "`@`";
            continue;
        }
        const bool obeyed_at_begin =
            ends_list_number(line, at) || (at == 0 && kEscapedAtBegin.find(c) != std::string_view::npos);
        const bool obeyed =
            kEscaped.find(c) != std::string_view::npos || emphasises(line, at) || makes_address(line, at);
        if (obeyed || (begins_line && obeyed_at_begin)) out += '\\';
        out += c;
    }
    return out;
}

}  // namespace grainside::report
