// Which types and members of schema.org stand for goods like ours.
#ifndef GRAINSIDE_LISTING_PRODUCT_TYPE_H
#define GRAINSIDE_LISTING_PRODUCT_TYPE_H

#include <string_view>

namespace grainside::listing {

// Product and the types below it, with or without what stands before the name ("https://schema.org/", "schema:").
bool is_product_type(std::string_view type);

// Whether an object with this member is a product: it holds words about one, its code or its offers.
bool makes_a_product(std::string_view member);

// The name alone: what stands behind the last '/', '#' or ':'.
std::string_view type_name(std::string_view type);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_PRODUCT_TYPE_H
