#include "listing/product_type.h"

#include <algorithm>
#include <array>

namespace grainside::listing {
namespace {

constexpr std::array<std::string_view, 6> kProductTypes = {"Product",      "IndividualProduct", "ProductModel",
                                                           "ProductGroup", "SomeProducts",      "ProductCollection"};

}  // namespace

std::string_view type_name(std::string_view type) {
    const std::size_t prefix = type.find_last_of("/#:");
    if (prefix != std::string_view::npos) type.remove_prefix(prefix + 1);
    return type;
}

bool is_product_type(std::string_view type) {
    return std::find(kProductTypes.begin(), kProductTypes.end(), type_name(type)) != kProductTypes.end();
}

}  // namespace grainside::listing
