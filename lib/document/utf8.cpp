#include "document/utf8.h"

namespace grainside::document {

DecodedChar decode_utf8(std::string_view text, std::size_t offset) noexcept {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[offset + i]); };
    const unsigned char lead = byte(0);
    if (lead < 0x80) return {lead, 1, true};

    std::size_t length = 0;
    char32_t point = 0;
    char32_t smallest = 0;
    if (lead >= 0xC2 && lead <= 0xDF) {
        length = 2, point = lead & 0x1Fu, smallest = 0x80;
    } else if ((lead & 0xF0u) == 0xE0) {
        length = 3, point = lead & 0x0Fu, smallest = 0x800;
    } else if (lead >= 0xF0 && lead <= 0xF4) {
        length = 4, point = lead & 0x07u, smallest = 0x10000;
    } else {
        return {};
    }
    if (text.size() - offset < length) return {};
    for (std::size_t i = 1; i < length; ++i) {
        if ((byte(i) & 0xC0u) != 0x80) return {};
        point = (point << 6) | (byte(i) & 0x3Fu);
    }
    const bool surrogate = point >= 0xD800 && point <= 0xDFFF;
    if (point < smallest || point > 0x10FFFF || surrogate) return {};
    return {point, length, true};
}

bool is_utf8(std::string_view text) noexcept {
    for (std::size_t at = 0; at < text.size();) {
        const DecodedChar decoded = decode_utf8(text, at);
        if (!decoded.valid) return false;
        at += decoded.length;
    }
    return true;
}

}  // namespace grainside::document
