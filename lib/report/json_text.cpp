#include "report/json_text.h"

#include <array>
#include <charconv>
#include <cstddef>
#include <cstring>

#include "document/utf8.h"

namespace grainside::report {
namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD";  // U+FFFD
constexpr char kHexDigits[] = "0123456789abcdef";

constexpr std::uint64_t in_each_byte(std::uint64_t value) {
    return 0x0101010101010101U * value;
}

// True where one of eight bytes is a quote, a backslash, a control or not ASCII. The subtractions find a zero byte (or
// one below 0x20) without a loop; they may also report a byte above such a one, which only costs a closer look.
bool needs_care(std::uint64_t eight) {
    const std::uint64_t quote = eight ^ in_each_byte('"');
    const std::uint64_t backslash = eight ^ in_each_byte('\\');
    const std::uint64_t del = eight ^ in_each_byte(0x7F);
    const std::uint64_t found = (eight - in_each_byte(0x20)) | (quote - in_each_byte(1)) |
                                (backslash - in_each_byte(1)) | (del - in_each_byte(1)) | eight;
    return (found & in_each_byte(0x80)) != 0;
}

// How many bytes from `at` on can be copied as they are.
std::size_t plain_run(std::string_view text, std::size_t at) {
    const std::size_t begin = at;
    while (text.size() - at >= sizeof(std::uint64_t)) {
        std::uint64_t eight = 0;
        std::memcpy(&eight, text.data() + at, sizeof(eight));
        if (needs_care(eight)) break;
        at += sizeof(eight);
    }
    // The last few bytes once more with those before them, rather than one by one.
    if (at < text.size() && text.size() - at < sizeof(std::uint64_t) && text.size() >= sizeof(std::uint64_t)) {
        std::uint64_t eight = 0;
        std::memcpy(&eight, text.data() + text.size() - sizeof(eight), sizeof(eight));
        if (!needs_care(eight)) return text.size() - begin;
    }
    const auto is_plain = [](char c) { return c >= 0x20 && c < 0x7F && c != '"' && c != '\\'; };
    while (at < text.size() && is_plain(text[at])) ++at;
    return at - begin;
}

bool is_escaped(char32_t point) {
    return (point >= 0x7F && point <= 0x9F) || point == 0x061C || point == 0x200E || point == 0x200F ||
           (point >= 0x2028 && point <= 0x202E) || (point >= 0x2066 && point <= 0x2069) || point == 0xFEFF;
}

// REQUIRES: point <= 0xFFFF.
void append_escape(std::string& out, char32_t point) {
    char escape[] = "\\u0000";
    for (int digit = 0; digit < 4; ++digit) escape[5 - digit] = kHexDigits[(point >> (4 * digit)) & 0xFU];
    out.append(escape, 6);
}

void append_ascii(std::string& out, char c) {
    switch (c) {
        case '"':
            out += "\\\"";
            return;
        case '\\':
            out += "\\\\";
            return;
        case '\n':
            out += "\\n";
            return;
        case '\r':
            out += "\\r";
            return;
        case '\t':
            out += "\\t";
            return;
        default:
            append_escape(out, static_cast<unsigned char>(c));
    }
}

// A run of characters that are not ASCII; returns where it ends.
std::size_t append_beyond_ascii(std::string& out, std::string_view text, std::size_t at) {
    std::size_t copied = at;
    const auto copy_up_to = [&](std::size_t end) { out.append(text.data() + copied, end - copied); };
    while (at < text.size() && static_cast<unsigned char>(text[at]) >= 0x80) {
        const document::DecodedChar decoded = document::decode_utf8(text, at);
        const std::size_t next = at + decoded.length;
        if (!decoded.valid || is_escaped(decoded.point)) {
            copy_up_to(at);
            copied = next;
            if (decoded.valid) {
                append_escape(out, decoded.point);
            } else {
                out += kReplacement;
            }
        }
        at = next;
    }
    copy_up_to(at);
    return at;
}

template <typename Number>
void append_number(std::string& out, Number number) {
    std::array<char, 32> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), number);
    out.append(digits.data(), end.ptr);
}

}  // namespace

void append_json_string(std::string& out, std::string_view text) {
    const std::size_t first_run = plain_run(text, 0);
    if (first_run == text.size()) {  // nearly every string: one look at the room for it, and both quotes at once
        const std::size_t begin = out.size();
        out.append(text.size() + 2, '"');
        text.copy(out.data() + begin + 1, text.size());
        return;
    }
    out += '"';
    out.append(text.data(), first_run);
    for (std::size_t at = first_run; at < text.size();) {
        const std::size_t plain = plain_run(text, at);
        out.append(text.data() + at, plain);
        at += plain;
        if (at == text.size()) break;
        if (static_cast<unsigned char>(text[at]) >= 0x80) {
            at = append_beyond_ascii(out, text, at);
        } else {
            append_ascii(out, text[at++]);
        }
    }
    out += '"';
}

void append_json_number(std::string& out, std::uint64_t number) {
    append_number(out, number);
}

void append_json_number(std::string& out, double number) {
    append_number(out, number);
}

}  // namespace grainside::report
