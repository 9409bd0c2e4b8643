// Money and multiples in words, for every report for people. Thread-safe.
#ifndef GRAINSIDE_REPORT_MONEY_TEXT_H
#define GRAINSIDE_REPORT_MONEY_TEXT_H

#include <string>
#include <string_view>

#include "evidence/cost_data.h"
#include "grainside/cost.h"

namespace grainside::report {

// How money of a currency is written: its code, and how many digits stand behind the point.
struct MoneyStyle {
    std::string currency;
    int digits = 2;
};
MoneyStyle style_of(std::string_view currency, const evidence::CostBook& book);

// "12.40"
std::string money_text(const MoneyStyle& style, double value);
// "11.05 to 13.90"
std::string range_text(const MoneyStyle& style, const CostAmount& amount);
// "12.40 EUR (11.05 to 13.90)"; without the brackets where it is exact.
std::string spread_text(const MoneyStyle& style, const CostAmount& amount);

// "2.90 (2.50 to 3.40)"; "at most 2.90 (2.50 to 3.40)" where costs are missing.
std::string multiple_text(const PriceMultiple& multiple);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_MONEY_TEXT_H
