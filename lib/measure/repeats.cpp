#include "measure/repeats.h"

#include <cmath>
#include <limits>

namespace grainside::measure {

Measured mean_of(std::span<const double> readings, double step) {
    // Welford's recurrence: no difference of large sums.
    double mean = 0;
    double squares = 0;
    double count = 0;
    for (const double reading : readings) {
        count += 1;
        const double from_old_mean = reading - mean;
        mean += from_old_mean / count;
        squares += from_old_mean * (reading - mean);
    }
    const double dof = count - 1;
    const double u = std::sqrt(squares / dof / count);
    const double of_resolution = step / std::sqrt(12.0);
    if (u < of_resolution) return {.value = mean, .u = of_resolution};
    // Without a step, readings that are all the same leave nothing to have degrees of freedom.
    if (u == 0) return {.value = mean};
    return {.value = mean, .u = u, .dof = dof};
}

std::optional<int> repeats_to_settle(const ReadingParts& parts, const Limit& limit, double guard_factor) {
    const auto settles = [&](int readings) {
        const double u = std::hypot(parts.repeatable / std::sqrt(readings), parts.systematic);
        return decide({.value = parts.value, .u = u}, limit, DecisionRule::both_guarded, guard_factor) !=
               Decision::undecided;
    };
    if (!settles(kMaxRepeats)) return std::nullopt;
    // The guard band shrinks with every reading, so what settles keeps settling: bisection finds the first.
    int enough = kMaxRepeats;
    int too_few = 0;
    while (enough - too_few > 1) {
        const int middle = too_few + (enough - too_few) / 2;
        (settles(middle) ? enough : too_few) = middle;
    }
    return enough;
}

}  // namespace grainside::measure
