// Density of water in g/cm3 from its temperature in degrees Celsius, 0 to 40.
//
// Formula: Tanaka and others, Metrologia 38 (2001) 301-309, recommended by the CIPM, for pure air-free water at
// 101 325 Pa. Its own uncertainty is below 0.000001 g/cm3 (from memory) and is left out: tap water and dissolved air
// matter more, and those who use them add what they know to `u`. Pure functions, any number of threads.
#ifndef GRAINSIDE_MEASURE_WATER_H
#define GRAINSIDE_MEASURE_WATER_H

#include <optional>

#include "measure/measured.h"

namespace grainside::measure {

// Nothing outside 0 to 40 degrees and for what is not a number: the formula is not stated there.
std::optional<double> water_density(double celsius);

// Change of the density in g/cm3 per degree; negative above 3.983 degrees. Nothing outside 0 to 40 degrees.
std::optional<double> water_density_slope(double celsius);

// The density with the uncertainty that the temperature brings, to first order: near 4 degrees, where the slope
// vanishes, it is too small by at most 0.000008 g/cm3 times the square of u in degrees.
std::optional<Measured> water_density(const Measured& celsius);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_WATER_H
