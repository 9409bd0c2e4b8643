// The microdata of a page: its items and their properties.
//
// Source: HTML standard, section "Microdata", from memory; the vocabulary is schema.org's. `itemref` is not followed:
// it would need the whole tree, and sellers do not write it around what a listing says.
#ifndef GRAINSIDE_LISTING_PAGE_ITEMS_H
#define GRAINSIDE_LISTING_PAGE_ITEMS_H

#include <cstddef>
#include <cstdint>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "listing/page_text.h"

namespace grainside::listing {

enum class ItemProperty : std::uint8_t {
    name,
    description,
    material,
    category,
    sku,
    in_language,
    brand,
    seller,
    additional_property,
    value,
    unit_text,
    offers,
    eligible_region,
    main_entity,
    item,
    item_list_element,
    has_variant,
    item_offered,
    unknown
};

struct PageItem {
    static constexpr std::size_t kNone = static_cast<std::size_t>(-1);

    bool is_product = false;
    std::size_t parent = kNone;                      // the item that it is a property of
    ItemProperty of_parent = ItemProperty::unknown;  // which one
    std::uint64_t line = 0;
    PageRange range;
    std::size_t first = kNone;  // its properties, a chain in order of the page
    std::size_t last = kNone;
};

struct PageProperty {
    ItemProperty name = ItemProperty::unknown;
    std::size_t next = PageItem::kNone;
    std::size_t item = PageItem::kNone;    // the value is an item,
    const std::string* written = nullptr;  // or was an attribute,
    PageRange range;                       // else it is the text of the element
};

// Not thread-safe.
class PageItems {
public:
    // More items, or properties, are not read, and `too_many` says so.
    static constexpr std::size_t kMost = 65536;

    // kNone where there are too many.
    std::size_t open(std::string_view type, std::size_t parent, ItemProperty of_parent, std::uint64_t line,
                     std::uint32_t begin);
    void close(std::size_t item, std::uint32_t end) { items_[item].range.end = end; }
    void add(std::size_t item, ItemProperty name, PageRange range);
    void add(std::size_t item, ItemProperty name, std::string value);

    bool too_many() const noexcept { return too_many_; }
    const std::vector<PageItem>& items() const noexcept { return items_; }
    const std::vector<PageProperty>& properties() const noexcept { return properties_; }

    // The products that are listings: those that stand for themselves, or where there is none, those of a list.
    // Products that a product names (related ones, accessories) are none of them.
    std::vector<std::size_t> products() const;

private:
    PageProperty* append(std::size_t item, ItemProperty name);

    std::vector<PageItem> items_;
    std::vector<PageProperty> properties_;
    std::deque<std::string> values_;
    bool too_many_ = false;
};

// The properties that we read, out of an itemprop attribute with one or more names.
std::vector<ItemProperty> item_properties(std::string_view itemprop);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_PAGE_ITEMS_H
