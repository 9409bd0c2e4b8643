// Finding bytes that are no UTF-8.
#ifndef GRAINSIDE_LISTING_UTF8_CHECK_H
#define GRAINSIDE_LISTING_UTF8_CHECK_H

#include <cstddef>
#include <string_view>

namespace grainside::listing {

// The first ill-formed sequence at or after `from`: as many bytes as no decoder could use ("maximal subpart", Unicode
// Standard 15.0, section 3.9). `length` 0 = there is none. `from` is on a character border.
struct InvalidBytes {
    std::size_t offset = 0;
    std::size_t length = 0;
};
InvalidBytes find_invalid_utf8(std::string_view text, std::size_t from);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_UTF8_CHECK_H
