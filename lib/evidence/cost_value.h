// One value of a build-up read from its text, and what the values of one line must be together.
//
// The reader of dossiers uses it and a value that is put in place of another does too, so that both obey the same
// rules. Texts of shares are percent; a bare value counts as exact, for it comes from an invoice or a count. Pure
// functions, any number of threads.
#ifndef GRAINSIDE_EVIDENCE_COST_VALUE_H
#define GRAINSIDE_EVIDENCE_COST_VALUE_H

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "evidence/cost_data.h"
#include "measure/quantity_text.h"

namespace grainside::evidence {

// "cutting_yield"; the key under which it stands in a dossier.
std::string_view key_of(CostInput input) noexcept;
// The same for people: "cutting yield".
std::string words_of(CostInput input);
// Money: price, rate and amount.
bool is_money(CostInput input) noexcept;

// The inputs that a line of this group may state, in the order in which they are read.
std::vector<CostInput> inputs_of(CostGroup group);

// Codes: those of parse_money and measure::QuantityFault with "bad-quantity" for what is no quantity, and
// "unknown-usual" (no range or duty of that name), "wrong-usual" (one for another input), "negative", "not-positive"
// (what is divided by may be 0), "above-100",
// "out-of-range" (above 1e9 in working units, shares above 500 %).
std::variant<CostValue, measure::QuantityFault> read_cost_value(CostInput input, std::string_view text,
                                                                const CostBook& book);

// The price of a sample: plain money, in the dossier and in place of that alike. Codes also: "bad-price" (paid for a
// part of something).
std::variant<CostValue, measure::QuantityFault> read_paid(std::string_view text, const CostBook& book);

struct EntryFault {
    std::optional<CostInput> at;  // the value that is wrong; none: the line as a whole
    std::string_view code;
    std::string message, hint;
};
// Values that cannot stand together or say nothing: "both-ways", "missing-key", "wrong-unit", "missing-exchange" (money
// in a currency that cannot be added up), "wrong-market" (a duty of the book that is not of where the product is sold).
std::vector<EntryFault> check_entry(const CostEntry& entry, const DossierCosts& costs, const CostBook& book);

// The area of one hide takes part: an area at a price per hide, or hides at a price per area.
bool converts_by_hide(const CostEntry& entry) noexcept;

// The value that a line lacks to have an amount, or that would make it larger: a price, a time, a cutting yield.
std::vector<CostInput> lacking(const CostEntry& entry);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_COST_VALUE_H
