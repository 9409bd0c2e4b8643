// How far a number's digits mean anything. Thread-safe.
#ifndef GRAINSIDE_MEASURE_SIGNIFICANT_PLACE_H
#define GRAINSIDE_MEASURE_SIGNIFICANT_PLACE_H

namespace grainside::measure {

// The power of ten at which the last of `digits` significant digits of `number` stands, after rounding to it: -3 for
// 0.0123 and two digits, -2 for 0.0996, which rounds to 0.10. The sign of `number` does not matter.
// REQUIRES: `number` is finite and not 0, digits >= 1.
int significant_place(double number, int digits);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_SIGNIFICANT_PLACE_H
