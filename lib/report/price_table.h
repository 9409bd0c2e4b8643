// Tables of money: a text that wraps, and amounts in columns at the right. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_PRICE_TABLE_H
#define GRAINSIDE_REPORT_PRICE_TABLE_H

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "evidence/cost_data.h"
#include "grainside/cost_report.h"

namespace grainside::report {

// "12.40"; as many digits behind the point as the currency has.
std::string money(double value, std::string_view currency, const evidence::CostBook& book);

// "12.40 EUR (11.05 to 13.90)"; without the brackets where it is exact.
std::string spread(const CostAmount& amount, std::string_view currency, const evidence::CostBook& book);

// "2.9 (2.5 to 3.4)"; "at most 2.9 (2.5 to 3.4)" where costs are missing.
std::string multiple_text(const PriceMultiple& multiple);

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
