// Which doubles a quantity may be. Pure function, any number of threads.
#ifndef GRAINSIDE_MEASURE_FULL_DOUBLE_H
#define GRAINSIDE_MEASURE_FULL_DOUBLE_H

#include <cmath>

namespace grainside::measure {

// Zero, or one with all of its digits. Next to zero a double has ever fewer (IEEE 754-2019, subnormal numbers, from
// memory), so that what is printed of it would not read back.
inline bool is_full(double number) {
    const int kind = std::fpclassify(number);
    return kind == FP_NORMAL || kind == FP_ZERO;
}

}  // namespace grainside::measure

#endif
