// Strict UTF-8: no overlong forms, no surrogates, nothing past U+10FFFF.
#ifndef GRAINSIDE_TEXT_UTF8_H
#define GRAINSIDE_TEXT_UTF8_H

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace grainside::text {

struct Decoded {
    char32_t code = 0;
    std::uint32_t length = 0;  // bytes; 0 = the byte at this place begins no character
};

// REQUIRES: at < text.size().
inline Decoded decode_utf8(std::string_view text, std::size_t at) {
    const auto byte = [&](std::size_t i) { return static_cast<std::uint8_t>(text[at + i]); };
    const auto continues = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
    const std::size_t left = text.size() - at;
    const std::uint32_t lead = byte(0);
    if (lead < 0x80) return {lead, 1};
    if (lead >= 0xC2 && lead <= 0xDF) {
        if (left < 2 || !continues(1)) return {};
        return {((lead & 0x1FU) << 6) | (byte(1) & 0x3FU), 2};
    }
    if (lead >= 0xE0 && lead <= 0xEF) {
        if (left < 3 || !continues(1) || !continues(2)) return {};
        const char32_t code = ((lead & 0x0FU) << 12) | ((byte(1) & 0x3FU) << 6) | (byte(2) & 0x3FU);
        if (code < 0x800 || (code >= 0xD800 && code <= 0xDFFF)) return {};
        return {code, 3};
    }
    if (lead >= 0xF0 && lead <= 0xF4) {
        if (left < 4 || !continues(1) || !continues(2) || !continues(3)) return {};
        const char32_t code =
            ((lead & 0x07U) << 18) | ((byte(1) & 0x3FU) << 12) | ((byte(2) & 0x3FU) << 6) | (byte(3) & 0x3FU);
        if (code < 0x10000 || code > 0x10FFFF) return {};
        return {code, 4};
    }
    return {};
}

// Writes one to four bytes and returns how many. REQUIRES: `code` is a character, not a surrogate.
inline std::uint32_t encode_utf8(char32_t code, char* out) {
    const auto tail = [&](unsigned shift) { return static_cast<char>(0x80U | ((code >> shift) & 0x3FU)); };
    if (code < 0x80) {
        out[0] = static_cast<char>(code);
        return 1;
    }
    if (code < 0x800) {
        out[0] = static_cast<char>(0xC0U | (code >> 6));
        out[1] = tail(0);
        return 2;
    }
    if (code < 0x10000) {
        out[0] = static_cast<char>(0xE0U | (code >> 12));
        out[1] = tail(6);
        out[2] = tail(0);
        return 3;
    }
    out[0] = static_cast<char>(0xF0U | (code >> 18));
    out[1] = tail(12);
    out[2] = tail(6);
    out[3] = tail(0);
    return 4;
}

}  // namespace grainside::text

#endif  // GRAINSIDE_TEXT_UTF8_H
