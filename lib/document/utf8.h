// Decoding one UTF-8 character at a time, strictly: no overlong forms, no surrogates, nothing above U+10FFFF.
// Source: The Unicode Standard, table 3-7 (well-formed UTF-8 byte sequences). Thread-safe.
#ifndef GRAINSIDE_DOCUMENT_UTF8_H
#define GRAINSIDE_DOCUMENT_UTF8_H

#include <cstddef>
#include <string_view>

namespace grainside::document {

struct DecodedChar {
    char32_t point = 0;
    std::size_t length = 1;  // bytes to step over; 1 for a byte that begins no well-formed character
    bool valid = false;
};

// REQUIRES: offset < text.size().
DecodedChar decode_utf8(std::string_view text, std::size_t offset) noexcept;

// Whether all of `text` is well-formed.
bool is_utf8(std::string_view text) noexcept;

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_UTF8_H
