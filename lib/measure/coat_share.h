// Share of a coat in the total thickness of a coated material, percent, with its uncertainty.
//
// Thicknesses in any one unit, working unit millimetre; total is coat and base together. First order (GUM, JCGM
// 100:2008, 5.2.2), with the covariance of the two thicknesses where the same tool or section gave both. The shares are
// not rounded: 0.40 of 1.20 is one third to the last digits of a double, so whoever compares an exact value with a
// limit "does not exceed one third" must allow for those. Pure functions, any number of threads.
#ifndef GRAINSIDE_MEASURE_COAT_SHARE_H
#define GRAINSIDE_MEASURE_COAT_SHARE_H

#include <optional>

#include "measure/measured.h"

namespace grainside::measure {

// 100 coat/total. `correlation` of the two readings, -1 to 1: one tool with one unknown zero error leans to 1, two
// tools to 0. Degrees of freedom as in propagation.h. Nothing for a negative coat, a total that is not positive, a coat
// above the total, a correlation outside -1 to 1, or a reading that is not usable (usable.h).
std::optional<Measured> coat_share(const Measured& coat, const Measured& total, double correlation = 0);

// 100 less that: the share of the base, with the same uncertainty.
std::optional<Measured> base_share(const Measured& coat, const Measured& total, double correlation = 0);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_COAT_SHARE_H
