// Turning the inside of a JSON string into the text that it stands for.
#ifndef GRAINSIDE_LISTING_JSON_STRING_H
#define GRAINSIDE_LISTING_JSON_STRING_H

#include <cstddef>
#include <optional>
#include <string_view>

#include "listing/text_arena.h"

namespace grainside::listing {

// The bytes of the first character or escape of a body, and the bytes of UTF-8 that it stands for; of a character that
// is written as it is, and of what is malformed, one byte.
struct JsonUnit {
    std::size_t written = 1;
    std::size_t text = 1;
};
JsonUnit first_unit(std::string_view body);

// Writes one to four bytes at `to` and returns their end; never more than a JSON escape of the character takes (6 bytes
// up to U+FFFF, 12 above). REQUIRES: at most 0x10FFFF.
char* put_utf8(char* to, unsigned code_point);

// `body` is what stands between the quotes; the result is UTF-8 in `arena`. Nothing where an escape is malformed or
// half a surrogate pair stands alone (RFC 8259 sections 7 and 8.2).
std::optional<std::string_view> unescape(std::string_view body, TextArena& arena);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_JSON_STRING_H
