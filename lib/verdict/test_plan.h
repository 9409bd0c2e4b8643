// Which tests are left to make for a dossier.
#ifndef GRAINSIDE_VERDICT_TEST_PLAN_H
#define GRAINSIDE_VERDICT_TEST_PLAN_H

#include "grainside/judge.h"
#include "verdict/claim_evidence.h"

namespace grainside::verdict {

// About the claims of `check` that a test could still decide, each statement once; where there is no listing
// (nullptr), about what each part of the dossier is.
TestPlan plan_tests(const Bench& bench, const RuleBook& book, const CheckResult* check);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_TEST_PLAN_H
