// What the bench formulas of this folder accept as a measured value. Pure function, any number of threads.
#ifndef GRAINSIDE_MEASURE_USABLE_H
#define GRAINSIDE_MEASURE_USABLE_H

#include <cmath>

#include "measure/measured.h"

namespace grainside::measure {

// A finite value with a finite uncertainty that is not negative, and dof above 0.
inline bool is_usable(const Measured& input) {
    return std::isfinite(input.value) && std::isfinite(input.u) && input.u >= 0 && input.dof > 0;
}

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_USABLE_H
