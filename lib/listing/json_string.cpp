#include "listing/json_string.h"

#include <algorithm>
#include <charconv>
#include <cstddef>

namespace grainside::listing {
namespace {

std::optional<unsigned> hex4(std::string_view digits) {
    if (digits.size() < 4) return std::nullopt;
    unsigned value = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + 4, value, 16);
    if (error != std::errc{} || end != digits.data() + 4) return std::nullopt;
    return value;
}

// The character that a one-letter escape stands for, '\0' for a letter that JSON does not know.
char simple_escape(char letter) {
    switch (letter) {
        case '"':
        case '\\':
        case '/':
            return letter;
        case 'b':
            return '\b';
        case 'f':
            return '\f';
        case 'n':
            return '\n';
        case 'r':
            return '\r';
        case 't':
            return '\t';
        default:
            return '\0';
    }
}

}  // namespace

char* put_utf8(char* to, unsigned code_point) {
    const auto put = [&](unsigned byte) { *to++ = static_cast<char>(byte); };
    if (code_point < 0x80) {
        put(code_point);
    } else if (code_point < 0x800) {
        put(0xC0U | code_point >> 6U);
        put(0x80U | (code_point & 0x3FU));
    } else if (code_point < 0x10000) {
        put(0xE0U | code_point >> 12U);
        put(0x80U | (code_point >> 6U & 0x3FU));
        put(0x80U | (code_point & 0x3FU));
    } else {
        put(0xF0U | code_point >> 18U);
        put(0x80U | (code_point >> 12U & 0x3FU));
        put(0x80U | (code_point >> 6U & 0x3FU));
        put(0x80U | (code_point & 0x3FU));
    }
    return to;
}

JsonUnit first_unit(std::string_view body) {
    if (body.size() < 2 || body.front() != '\\') return {};
    if (body[1] != 'u') return {2, 1};
    const std::optional<unsigned> code_point = hex4(body.substr(2));
    if (!code_point) return {};
    if (*code_point >= 0xD800 && *code_point <= 0xDBFF) return {12, 4};
    return {6, *code_point < 0x80 ? 1U : *code_point < 0x800 ? 2U : 3U};
}

std::optional<std::string_view> unescape(std::string_view body, TextArena& arena) {
    char* const start = arena.reserve(body.size());
    char* to = start;
    while (!body.empty()) {
        const std::size_t plain = std::min(body.find('\\'), body.size());
        to = std::copy_n(body.data(), plain, to);
        body.remove_prefix(plain);
        if (body.empty()) break;
        if (body.size() < 2) return std::nullopt;
        if (body[1] != 'u') {
            const char character = simple_escape(body[1]);
            if (character == '\0') return std::nullopt;
            *to++ = character;
            body.remove_prefix(2);
            continue;
        }
        std::optional<unsigned> code_point = hex4(body.substr(2));
        if (!code_point) return std::nullopt;
        body.remove_prefix(6);
        if (*code_point >= 0xDC00 && *code_point <= 0xDFFF) return std::nullopt;
        if (*code_point >= 0xD800 && *code_point <= 0xDBFF) {
            if (!body.starts_with("\\u")) return std::nullopt;
            const std::optional<unsigned> low = hex4(body.substr(2));
            if (!low || *low < 0xDC00 || *low > 0xDFFF) return std::nullopt;
            code_point = 0x10000U + ((*code_point - 0xD800U) << 10U) + (*low - 0xDC00U);
            body.remove_prefix(6);
        }
        to = put_utf8(to, *code_point);
    }
    return arena.keep(static_cast<std::size_t>(to - start));
}

}  // namespace grainside::listing
