// What stands behind a cost, for every report for people. Thread-safe.
#ifndef GRAINSIDE_REPORT_COST_FACTS_H
#define GRAINSIDE_REPORT_COST_FACTS_H

#include <cstdint>
#include <string>
#include <vector>

#include "grainside/cost.h"

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

// A step of the build-up, in written order: a line, or a sum of all that stand before it. A sum that takes in no more
// than the one before it is left out.
struct CostStep {
    std::string text;                // "calf for the face (strap)", "to make"
    const CostLine* line = nullptr;  // nullptr for a sum
    CostAmount amount;
    double begins_at = 0;  // what stands before a line comes to; 0 for a sum
};
// Points into `cost`.
std::vector<CostStep> steps_of(const CostEstimate& cost);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_COST_FACTS_H
