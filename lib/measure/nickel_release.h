// Decision on a nickel release test by EN 1811, micrograms/cm2/week.
//
// The standard compares the one measured release with bounds that already hold the uncertainty of its method, so no
// uncertainty of the reading is added on top. Editions differ: EN 1811:2011 left a zone undecided between the REACH
// limit divided and multiplied by a factor; the amendment A1:2015 removed it, and only the upper bound decides. The
// bounds are arguments, because the printed ones are rounded (0.88 and 0.35 for the limits 0.5 and 0.2) and stand in
// the rules with their sources. What the 2023 edition says was not visible. Pure functions, any number of threads; they
// return nothing for a release or bound that is negative or no number.
#ifndef GRAINSIDE_MEASURE_NICKEL_RELEASE_H
#define GRAINSIDE_MEASURE_NICKEL_RELEASE_H

#include <cstdint>
#include <optional>

namespace grainside::measure {

enum class NickelZone : std::uint8_t { conforms, undecided, does_not_conform };

struct NickelBounds {
    double conforms_to = 0;  // conforms up to and with this value
    double fails_from = 0;   // does not conform from this value on
};

// limit / factor and limit * factor, unrounded. Every figure printed in EN 1811:2011 is one of these with a factor of
// 1.76, rounded (recomputed: 0.284, 0.88, 0.114, 0.352). Nothing unless limit > 0 and factor >= 1.
std::optional<NickelBounds> nickel_bounds(double limit, double factor);

// EN 1811:2011, three zones. Nothing also for conforms_to >= fails_from.
std::optional<NickelZone> nickel_zone_2011(double release, const NickelBounds& bounds);

// EN 1811:2011+A1:2015: conforms below `fails_from`, does not from there on.
std::optional<NickelZone> nickel_zone_2015(double release, double fails_from);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_NICKEL_RELEASE_H
