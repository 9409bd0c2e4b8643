// The list of products in an object that is no product itself, as feeds and interfaces of shops write it:
// {"total": 2, "products": [{...}, {...}]}.
#ifndef GRAINSIDE_LISTING_WRAPPED_LIST_H
#define GRAINSIDE_LISTING_WRAPPED_LIST_H

#include <cstddef>
#include <string>
#include <string_view>

#include "listing/json_scanner.h"

namespace grainside::listing {

// Offsets count in the object.
struct WrappedList {
    std::string_view name;       // as it is written, without quotes; empty = there is none
    std::string_view next_name;  // of a second list that may be meant just as well; then nothing is to be read
    std::size_t name_at = 0;     // of the opening quote
    std::size_t begin = 0;       // of the [
    std::size_t end = 0;         // behind the ], or 0: it is broken, and ends nobody knows where
    bool is_graph = false;       // "@graph" of JSON-LD, which is the list whatever else the object has
    bool has_products = false;   // its first object has a member that makes a product, as far as it can be read
};

// `object` begins with {. A member may hold the products if it is a list whose first element is an object, and if the
// object itself has no member that makes a product (product_type.h), before it or behind. Of several lists the one is
// meant whose first object has such a member. Names with escapes are taken to be a product's. What cannot be read as
// JSON ends the search. Linear in `object`.
WrappedList find_wrapped_list(std::string_view object, JsonScanner& scanner);

// In double quotes, cut where it is long.
std::string shown_name(std::string_view name);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_WRAPPED_LIST_H
