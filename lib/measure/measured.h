// A measured value with its standard uncertainty.
//
// The unit is the working unit of the value's dimension (unit.h). The uncertainty is that of the GUM (JCGM 100:2008,
// 2.3.1): one standard deviation of what could reasonably be attributed to the measurand; 0 says that the value is
// exact. Plain data, as safe as a double.
#ifndef GRAINSIDE_MEASURE_MEASURED_H
#define GRAINSIDE_MEASURE_MEASURED_H

#include <limits>

namespace grainside::measure {

struct Measured {
    double value = 0;
    double u = 0;                                          // standard uncertainty, never negative
    double dof = std::numeric_limits<double>::infinity();  // degrees of freedom of `u`
};

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_MEASURED_H
