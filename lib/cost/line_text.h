// How a line of costs came about, for people. Text of the dossier stands in it as it is: whoever shows it makes it
// inert. Thread-safe.
#ifndef GRAINSIDE_COST_LINE_TEXT_H
#define GRAINSIDE_COST_LINE_TEXT_H

#include <string>

#include "evidence/cost_data.h"
#include "grainside/cost.h"
#include "grainside/rule_book.h"

namespace grainside::cost {

// "6.2-6.8 sq ft at 4.50-6.00 EUR/sq ft, cutting yield 65-75 %", "20 % of latigo".
std::string basis_of(const evidence::CostEntry& entry, const evidence::CostBook& book);

// "maker's price, freight and insurance".
std::string words_of(evidence::DutyBase base);

UsualRange usual_range(const evidence::UsualCost& usual);
UsualRange usual_range(const evidence::Duty& duty);

}  // namespace grainside::cost

#endif  // GRAINSIDE_COST_LINE_TEXT_H
