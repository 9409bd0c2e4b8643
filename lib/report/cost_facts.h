// What stands behind a cost, for every report for people. Thread-safe.
#ifndef GRAINSIDE_REPORT_COST_FACTS_H
#define GRAINSIDE_REPORT_COST_FACTS_H

#include <cstdint>
#include <string>
#include <vector>

#include "grainside/cost.h"
#include "report/report_content.h"

namespace grainside::report {

// Of every range and rate of the book that the estimate took or names, each once, as indices into RuleBook::sources().
std::vector<std::uint32_t> cost_sources(const CostEstimate& cost);

// The ends of a usual multiple, "2-2.5"; both 0 where it is no range.
struct MultipleBand {
    std::string title;
    double low = 0;
    double high = 0;
};
std::vector<MultipleBand> usual_bands(const CostEstimate& cost);

// A step of the build-up, in written order: a line, or a sum of all that stand before it.
struct CostStep {
    std::string text;
    std::string basis;  // empty for a sum
    CostAmount amount;
    double begins_at = 0;  // what stands before a line comes to; 0 for a sum
    bool is_sum = false;
};
std::vector<CostStep> steps_of(const CostEstimate& cost);

// "16.14"; as many digits behind the point as the currency has.
std::string money_text(const ReportCost& cost, double value);
// "16.14 EUR (14.57 to 17.80)"; without the brackets where it is exact.
std::string spread_text(const ReportCost& cost, const CostAmount& amount);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_COST_FACTS_H
