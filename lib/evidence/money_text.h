// Money as people write it, read into an amount, a currency and what it is paid for.
//
//     "64.00 EUR"   "EUR 4.50-6.00 / sq ft"   "4.50 +- 0.30 EUR/m2"   "8 EUR per sq ft"   "1.10-1.60 EUR/piece", "2 EUR
//     each"
//
// The number is what measure::parse_quantity takes, so ranges, plus-minus and repeats mean what they mean everywhere.
// Codes are those of ISO 4217 in capitals; a symbol counts where one currency of the book has it. Where the book lists
// no currencies, any three capitals are a code. Limit: measure::kMaxQuantityBytes. Thread-safe.
#ifndef GRAINSIDE_EVIDENCE_MONEY_TEXT_H
#define GRAINSIDE_EVIDENCE_MONEY_TEXT_H

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

#include "evidence/cost_data.h"
#include "measure/quantity_text.h"

namespace grainside::evidence {

struct ParsedMoney {
    measure::ParsedQuantity amount;         // per working unit of `per`
    std::string currency;                   // ISO 4217
    std::optional<measure::Dimension> per;  // number: a piece; none: plain money
    double per_factor = 1;                  // working units in the unit that is written
};

// Codes beside those of measure::QuantityFault: "missing-currency", "unknown-currency", "mixed-currencies",
// "which-currency" (a symbol that several have), "negative".
std::variant<ParsedMoney, measure::QuantityFault> parse_money(std::string_view text,
                                                              std::span<const Currency> currencies);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_MONEY_TEXT_H
