// Repeat readings: what several of them say together, and how many would settle what one leaves open. Thread-safe.
#ifndef GRAINSIDE_MEASURE_REPEATS_H
#define GRAINSIDE_MEASURE_REPEATS_H

#include <optional>
#include <span>

#include "measure/conformity.h"
#include "measure/measured.h"

namespace grainside::measure {

// The mean of repeat readings with u = s / sqrt n and n - 1 degrees of freedom (JCGM 100:2008, 4.2.3).
//
// Readings that agree better than the instrument shows them prove no more than its resolution: u is at least
// `step` / sqrt 12 (JCGM 100:2008, F.2.2.1), with infinite degrees of freedom where that holds. `step` is what the last
// digit of a reading is worth; 0 for readings without such a step.
// REQUIRES: at least two readings, all finite; step >= 0. The result may be infinite where the readings are near the
// end of what a double holds.
Measured mean_of(std::span<const double> readings, double step);

// What a reading's uncertainty is made of: `repeatable` is the standard deviation of one reading, which shrinks with
// the root of their number; `systematic` is the standard uncertainty that they share and that stays (calibration,
// method).
struct ReadingParts {
    double value = 0;
    double repeatable = 0;
    double systematic = 0;
};

// Beyond this many nobody measures.
inline constexpr int kMaxRepeats = 10'000;

// How many readings in all would decide under DecisionRule::both_guarded, if their mean is `parts.value`: the smallest
// n for which the value is further from the limit than the guard band guard_factor * 2 * u(n), with u(n)^2 =
// repeatable^2 / n + systematic^2. 1 where one reading is enough. Nothing where no number up to kMaxRepeats would: the
// value lies on the limit, or what is systematic alone reaches that far. REQUIRES: all finite, no uncertainty negative,
// guard_factor >= 0.
std::optional<int> repeats_to_settle(const ReadingParts& parts, const Limit& limit, double guard_factor = 1);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_REPEATS_H
