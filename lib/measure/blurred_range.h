// How well a measured value agrees with a range, the value blurred by normal measurement noise.
//
// Two questions that must not be mixed. The likelihood asks: were the true value anywhere in the range, with equal
// chance, how dense would readings lie at this one? It compares ranges with each other. The probability asks: how sure
// is it, from the reading alone, that the true value is in the range? conformity.h answers the second for decisions;
// here it is a logarithm that stays exact where the probability itself is 0 in a double, for comparing misfits.
// Normal noise; degrees of freedom are not used. Pure functions, any number of threads; no answer is NaN.
#ifndef GRAINSIDE_MEASURE_BLURRED_RANGE_H
#define GRAINSIDE_MEASURE_BLURRED_RANGE_H

#include <optional>

#include "measure/measured.h"

namespace grainside::measure {

struct Range {
    double low = 0;
    double high = 0;
};

// log of (Phi((high - x)/u) - Phi((low - x)/u)) / (high - low), per unit of the value; exact in the tails, where the
// difference itself is 0 in a double. A range without width gives the normal density around it; u = 0 the uniform
// density, minus infinity outside; both at once 0 on the spot. Nothing for low > high, infinite bounds or an input that
// is not usable (usable.h).
std::optional<double> log_likelihood(const Measured& value, const Range& range);

// log of Phi((high - x)/u) - Phi((low - x)/u), at most 0. Bounds may be infinite, so that a limit on one side is a
// range too. u = 0 gives 0 inside and on the bounds, minus infinity outside. Nothing for low > high, NaN or as above.
std::optional<double> log_probability(const Measured& value, const Range& range);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_BLURRED_RANGE_H
