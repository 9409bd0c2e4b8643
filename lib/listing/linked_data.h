// The products in a page's JSON-LD.
#ifndef GRAINSIDE_LISTING_LINKED_DATA_H
#define GRAINSIDE_LISTING_LINKED_DATA_H

#include <cstddef>
#include <string_view>
#include <vector>

#include "listing/issue_sink.h"
#include "listing/json_scanner.h"
#include "listing/place.h"

namespace grainside::listing {

// Looks for schema.org products in an object, in lists, below "@graph", "mainEntity", "item" and "itemListElement", and
// for the variants of a ProductGroup that say something of their own. Other members are not looked into: a product that
// a product names is another one. Not thread-safe.
class LinkedData {
public:
    // More products of a page are not read ("record-too-large").
    static constexpr std::size_t kMostProducts = 10000;

    // `script` is the inside of a script element and outlives the result. What is not JSON is reported as the warning
    // "json-syntax", because the page may say the same in another way.
    void read(const RecordText& script, IssueSink& sink);

    // The products that stand for themselves; where there is none, those of lists. A list beside a product holds
    // others.
    const std::vector<RecordText>& products() const noexcept { return products_.empty() ? listed_ : products_; }

private:
    struct Members;
    void value(std::string_view json, unsigned depth, bool in_list);
    void list(std::string_view json, unsigned depth, bool in_list);
    void object(std::string_view json, unsigned depth, bool in_list);
    Members members_of(std::string_view object);
    std::string_view value_at(std::string_view json, std::size_t at);
    void add(std::string_view json, bool in_list);
    void count_to(std::size_t at);

    RecordText script_;
    IssueSink* sink_ = nullptr;
    JsonScanner scanner_;
    std::vector<RecordText> products_;
    std::vector<RecordText> listed_;
    std::size_t counted_to_ = 0;
    Place counted_;
    bool too_many_ = false;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_LINKED_DATA_H
