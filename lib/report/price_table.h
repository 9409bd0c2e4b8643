// Tables of money: a text that wraps, and amounts in columns at the right. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_PRICE_TABLE_H
#define GRAINSIDE_REPORT_PRICE_TABLE_H

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/cost_report.h"

namespace grainside::report {

// One row: `text` in what the columns leave, then each cell right-aligned in its column. Cells must be plain ASCII.
void append_row(std::string& out, std::size_t indent, std::string_view text, std::span<const std::string> cells,
                std::span<const std::size_t> columns, std::size_t width);

// The samples of each seller in order, sellers by the first sample of each.
struct SellerSamples {
    std::string_view seller;
    std::vector<const PricedSample*> samples;
};
std::vector<SellerSamples> by_seller(std::span<const PricedSample> samples);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_PRICE_TABLE_H
