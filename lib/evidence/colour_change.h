// The change of a colour between two CIELAB readings, with its uncertainty.
#ifndef GRAINSIDE_EVIDENCE_COLOUR_CHANGE_H
#define GRAINSIDE_EVIDENCE_COLOUR_CHANGE_H

#include <array>

#include "measure/measured.h"

namespace grainside::evidence {

// L, a and b.
using MeasuredColour = std::array<measure::Measured, 3>;

struct ColourChange {
    measure::Measured ciede2000;   // CIEDE2000, kL = kC = kH = 1
    measure::Measured difference;  // dE_F of ISO 105-A05, from which the grey scale rating follows
};

// A difference of colours is never negative, so near 0 its slopes vanish and the first order of the GUM would call two
// equal readings certain. Each coordinate therefore counts with the root mean square of what a step of its standard
// uncertainty up and down does: the same as the first order where the difference is near linear, and at 0 the second
// moment about it (for the plain CIELAB distance exactly so). Coordinates are independent.
// Pure function, any number of threads. REQUIRES: finite values, u >= 0.
ColourChange colour_change(const MeasuredColour& before, const MeasuredColour& after);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_COLOUR_CHANGE_H
