// Rows of two cells, and terms with what is said of them: the specification of a page.
#ifndef GRAINSIDE_LISTING_PAGE_PAIRS_H
#define GRAINSIDE_LISTING_PAGE_PAIRS_H

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "listing/html_element.h"
#include "listing/page_text.h"

namespace grainside::listing {

// A row of two cells, or a <dt> with its <dd>.
struct PagePair {
    PageRange name;
    PageRange value;
};

// Told of elements as they begin and end; tables and lists may stand in one another. Not thread-safe.
class PagePairs {
public:
    void begin(Element element);
    // The pair that ends with `element`, whose words are `range`.
    std::optional<PagePair> end(Element element, PageRange range);

    // Whether a cell stands before this place in its row.
    bool is_in_row() const noexcept { return !rows_.empty() && rows_.back().count > 0; }

private:
    struct Row {
        std::array<PageRange, 2> cells;
        std::array<bool, 2> is_heading{};
        std::size_t count = 0;
    };

    void end_cell(PageRange range, bool is_heading);
    std::optional<PagePair> end_row();

    std::vector<Row> rows_;
    std::vector<PageRange> terms_;
};

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_PAGE_PAIRS_H
