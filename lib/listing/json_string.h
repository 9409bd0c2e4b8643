// Turning the inside of a JSON string into the text that it stands for.
#ifndef GRAINSIDE_LISTING_JSON_STRING_H
#define GRAINSIDE_LISTING_JSON_STRING_H

#include <optional>
#include <string_view>

#include "listing/text_arena.h"

namespace grainside::listing {

// `body` is what stands between the quotes; the result is UTF-8 in `arena`. Nothing where an escape is malformed or
// half a surrogate pair stands alone (RFC 8259 sections 7 and 8.2).
std::optional<std::string_view> unescape(std::string_view body, TextArena& arena);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_JSON_STRING_H
