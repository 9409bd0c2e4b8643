#include "listing/page_items.h"

#include <algorithm>
#include <iterator>

#include "listing/html_element.h"
#include "listing/product_type.h"

namespace grainside::listing {
namespace {

constexpr std::string_view kPropertyNames[] = {
    "name",   "description",        "material",   "category",   "sku",    "inLanguage",     "brand",
    "seller", "additionalProperty", "value",      "unitText",   "offers", "eligibleRegion", "mainEntity",
    "item",   "itemListElement",    "hasVariant", "itemOffered"};
static_assert(std::size(kPropertyNames) == static_cast<std::size_t>(ItemProperty::unknown));

// What a listing may hang below, on the way up from its item.
bool leads_to_product(ItemProperty of_parent) {
    switch (of_parent) {
        case ItemProperty::main_entity:
        case ItemProperty::item:
        case ItemProperty::item_list_element:
        case ItemProperty::has_variant:
        case ItemProperty::item_offered:
        case ItemProperty::offers:
            return true;
        default:
            return false;
    }
}

}  // namespace

std::vector<ItemProperty> item_properties(std::string_view itemprop) {
    std::vector<ItemProperty> found;
    each_html_word(itemprop, [&](std::string_view word) {
        const auto* const known = std::find(std::begin(kPropertyNames), std::end(kPropertyNames), word);
        const auto property = static_cast<ItemProperty>(known - std::begin(kPropertyNames));
        if (std::find(found.begin(), found.end(), property) == found.end()) found.push_back(property);
    });
    return found;
}

std::size_t PageItems::open(std::string_view type, std::size_t parent, ItemProperty of_parent, std::uint64_t line,
                            std::uint32_t begin) {
    if (items_.size() == kMost) {
        too_many_ = true;
        return PageItem::kNone;
    }
    PageItem item;
    each_html_word(type, [&](std::string_view word) { item.is_product = item.is_product || is_product_type(word); });
    item.parent = parent;
    item.of_parent = of_parent;
    item.line = line;
    item.range = {begin, begin};
    items_.push_back(item);
    const std::size_t at = items_.size() - 1;
    if (parent != PageItem::kNone) {
        if (PageProperty* property = append(parent, of_parent)) property->item = at;
    }
    return at;
}

void PageItems::add(std::size_t item, ItemProperty name, PageRange range) {
    if (PageProperty* property = append(item, name)) property->range = range;
}

void PageItems::add(std::size_t item, ItemProperty name, std::string value) {
    PageProperty* property = append(item, name);
    if (property == nullptr) return;
    values_.push_back(std::move(value));
    property->written = &values_.back();
}

PageProperty* PageItems::append(std::size_t item, ItemProperty name) {
    if (properties_.size() == kMost) {
        too_many_ = true;
        return nullptr;
    }
    properties_.emplace_back();
    properties_.back().name = name;
    const std::size_t at = properties_.size() - 1;
    if (items_[item].last == PageItem::kNone) {
        items_[item].first = at;
    } else {
        properties_[items_[item].last].next = at;
    }
    items_[item].last = at;
    return &properties_.back();
}

std::vector<std::size_t> PageItems::products() const {
    std::vector<std::size_t> direct;
    std::vector<std::size_t> listed;
    // Parents stand before their children, so that one pass tells what hangs below what.
    enum class Below : std::uint8_t { nothing, list, other };
    std::vector<Below> below(items_.size(), Below::nothing);
    for (std::size_t i = 0; i < items_.size(); ++i) {
        const PageItem& item = items_[i];
        if (item.parent != PageItem::kNone) {
            const PageItem& parent = items_[item.parent];
            below[i] = below[item.parent];
            const bool is_variant = item.of_parent == ItemProperty::has_variant;
            if (!leads_to_product(item.of_parent) || (parent.is_product && !is_variant)) below[i] = Below::other;
            if (below[i] == Below::nothing && item.of_parent == ItemProperty::item_list_element) below[i] = Below::list;
        }
        if (!item.is_product || below[i] == Below::other) continue;
        (below[i] == Below::list ? listed : direct).push_back(i);
    }
    return direct.empty() ? listed : direct;
}

}  // namespace grainside::listing
