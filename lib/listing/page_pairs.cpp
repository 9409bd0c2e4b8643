#include "listing/page_pairs.h"

namespace grainside::listing {

void PagePairs::begin(Element element) {
    if (element == Element::tr) rows_.emplace_back();
    if (element == Element::dl) terms_.emplace_back();
}

std::optional<PagePair> PagePairs::end(Element element, PageRange range) {
    switch (element) {
        case Element::td:
        case Element::th:
            end_cell(range, element == Element::th);
            return std::nullopt;
        case Element::tr:
            return end_row();
        case Element::dt:
            if (!terms_.empty()) terms_.back() = range;
            return std::nullopt;
        case Element::dd:
            return terms_.empty() ? std::nullopt : std::optional(PagePair{terms_.back(), range});
        case Element::dl:
            if (!terms_.empty()) terms_.pop_back();
            return std::nullopt;
        default:
            return std::nullopt;
    }
}

void PagePairs::end_cell(PageRange range, bool is_heading) {
    if (rows_.empty()) return;
    Row& row = rows_.back();
    if (row.count++ >= row.cells.size()) return;
    row.cells[row.count - 1] = range;
    row.is_heading[row.count - 1] = is_heading;
}

std::optional<PagePair> PagePairs::end_row() {
    if (rows_.empty()) return std::nullopt;
    const Row row = rows_.back();
    rows_.pop_back();
    // Two headings head columns.
    if (row.count != 2 || row.is_heading[1]) return std::nullopt;
    return PagePair{row.cells[0], row.cells[1]};
}

}  // namespace grainside::listing
