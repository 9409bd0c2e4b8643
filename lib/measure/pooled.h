// One value from several readings of the same quantity, each with its own uncertainty. Thread-safe.
#ifndef GRAINSIDE_MEASURE_POOLED_H
#define GRAINSIDE_MEASURE_POOLED_H

#include <span>

#include "measure/measured.h"

namespace grainside::measure {

// The mean weighed by 1/u^2. Where the readings scatter more than their uncertainties allow, u is widened by the ratio
// of R. T. Birge (Physical Review 40, 1932, 207; from memory): sqrt(sum of squared normalised residuals / (n - 1)),
// never below 1; so readings that disagree do not look sure together. Readings with u = 0 are exact: only they count
// then, and where they differ, u is their standard deviation of the mean. The order of the readings does not matter.
// REQUIRES: at least one reading, all finite.
Measured pooled(std::span<const Measured> readings);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_POOLED_H
