#include "listing/product_type.h"

#include <algorithm>
#include <array>

namespace grainside::listing {
namespace {

constexpr std::array<std::string_view, 6> kProductTypes = {"Product",      "IndividualProduct", "ProductModel",
                                                           "ProductGroup", "SomeProducts",      "ProductCollection"};
constexpr std::array<std::string_view, 7> kOwnMembers = {"name", "description",        "material", "category",
                                                         "sku",  "additionalProperty", "offers"};

}  // namespace

bool makes_a_product(std::string_view member) {
    return std::find(kOwnMembers.begin(), kOwnMembers.end(), member) != kOwnMembers.end();
}

std::string_view type_name(std::string_view type) {
    const std::size_t prefix = type.find_last_of("/#:");
    if (prefix != std::string_view::npos) type.remove_prefix(prefix + 1);
    return type;
}

bool is_product_type(std::string_view type) {
    return std::find(kProductTypes.begin(), kProductTypes.end(), type_name(type)) != kProductTypes.end();
}

}  // namespace grainside::listing
