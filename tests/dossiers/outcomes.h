// Everything that the books make of a dossier, as text: what each part may be, each claim's verdict, the limits asked,
// the tests planned, the costs. For holding against what was said before; nothing here says that it is right.
#ifndef GRAINSIDE_TESTS_DOSSIERS_OUTCOMES_H
#define GRAINSIDE_TESTS_DOSSIERS_OUTCOMES_H

#include <string>

#include "grainside/cost.h"
#include "grainside/dossier.h"
#include "grainside/evidence_book.h"
#include "grainside/judge.h"
#include "grainside/learn.h"
#include "grainside/rule_book.h"

namespace grainside::tests {

// Beliefs with six significant digits, sums and differences with a fixed number of decimals: what rounding of the C
// library or the compiler changes lies far behind those.
std::string text_of_beliefs(const Judgement& identified);
std::string text_of_verdicts(const Listing& listing, const Judgement& judged);
std::string text_of_plan(const TestPlan& plan);
std::string text_of_costs(const CostEstimate& cost);
std::string text_of_learning(const Learning& learning);

// By frame and claim, a letter for each candidate: t where it makes the claim true, f false, o left open.
std::string text_of_bearings(const RuleBook& rules, const EvidenceBook& evidence);

}  // namespace grainside::tests

#endif  // GRAINSIDE_TESTS_DOSSIERS_OUTCOMES_H
