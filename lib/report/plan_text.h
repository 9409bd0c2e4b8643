// A plan of tests in words. Thread-safe.
#ifndef GRAINSIDE_REPORT_PLAN_TEXT_H
#define GRAINSIDE_REPORT_PLAN_TEXT_H

#include <string>

#include "grainside/judge.h"

namespace grainside::report {

// "5 min, about 3 euro; harmless"
std::string effort_text(const PlannedTest& test);

// "3 open questions; 2 tests, 15 min and about 0 euro, should decide about 2.1 of them."; why there is no test where
// there is none.
std::string plan_summary(const TestPlan& plan, bool has_listing, bool has_parts);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_PLAN_TEXT_H
