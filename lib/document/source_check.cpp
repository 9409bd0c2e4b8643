#include "document/source_check.h"

#include <cstdint>
#include <string>

#include "document/inert_text.h"
#include "document/utf8.h"

namespace grainside::document {
namespace {

bool is_printable(char32_t point) {
    return point == '\t' || (point >= 0x20 && point <= 0x7E) || point == 0x85 || (point >= 0xA0 && point <= 0xD7FF) ||
           (point >= 0xE000 && point <= 0xFFFD) || point >= 0x10000;
}

std::string hex_name(char32_t point) {
    constexpr std::string_view kDigits = "0123456789ABCDEF";
    std::string name = "U+";
    for (int shift = 12; shift >= 0; shift -= 4) name += kDigits[(point >> shift) & 0xFu];
    return name;
}

// Says what is wrong with one line by its column; a line without fault gives an issue without code.
Issue check_line(std::string_view line) {
    Issue issue;
    for (std::size_t at = 0; at < line.size();) {
        const DecodedChar decoded = decode_utf8(line, at);
        issue.column = static_cast<std::uint32_t>(at + 1);
        if (!decoded.valid) {
            issue.code = "not-utf8";
            issue.message = "these bytes are not UTF-8";
            issue.hint = "save the file as UTF-8";
            return issue;
        }
        if (decoded.point == '\r') {
            issue.code = "yaml-syntax";
            issue.message = "a carriage return stands without a line feed";
            issue.hint = "end lines with a line feed, or with both";
            return issue;
        }
        if (!is_printable(decoded.point)) {
            issue.code = "yaml-syntax";
            issue.message = "the character " + hex_name(decoded.point) + " is not allowed in YAML";
            issue.hint = "remove it";
            return issue;
        }
        at += decoded.length;
    }
    return issue;
}

}  // namespace

bool check_source(std::string_view file, std::string_view text, Faults& faults) {
    bool good = true;
    std::uint32_t line_number = 0;
    while (!text.empty()) {
        ++line_number;
        const std::size_t end = text.find('\n');
        std::string_view line = text.substr(0, end);
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
        if (end != std::string_view::npos && line.ends_with('\r')) line.remove_suffix(1);
        Issue issue = check_line(line);
        if (issue.code.empty()) continue;
        good = false;
        issue.file = file;
        issue.line = line_number;
        issue.excerpt = make_excerpt(line, issue.column);
        faults.add(std::move(issue));
    }
    return good;
}

}  // namespace grainside::document
