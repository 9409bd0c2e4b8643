// Density of a solid in g/cm3 from its weight in air and in a liquid, both in grams.
//
//     density = W_air (rho_liquid - rho_air) / (W_air - W_liquid) + rho_air
//
// Source: the buoyancy method as balance makers print it for their density kits (hyd-formula of the fact base). The
// density of the balance's own weights cancels, because both readings carry it. Uncertainty is first order with the
// closed partial derivatives (GUM, JCGM 100:2008, 5.1.3), inputs independent. Trapped air is not an uncertainty of
// either sign: it only ever lowers the result, see density_without_trapped_air.
// Pure functions, any number of threads.
#ifndef GRAINSIDE_MEASURE_WEIGHING_H
#define GRAINSIDE_MEASURE_WEIGHING_H

#include <optional>

#include "measure/measured.h"

namespace grainside::measure {

// Air of a room near sea level, g/cm3 (balance manuals); the uncertainty covers its usual weather.
inline constexpr Measured kRoomAir{.value = 0.0012, .u = 0.00003};

// Density of the standard weights that balances are adjusted with, g/cm3 (OIML convention).
inline constexpr double kStandardWeights = 8.0;

struct Weighing {
    Measured in_air;          // g
    Measured in_liquid;       // g, the piece fully under the surface
    Measured liquid_density;  // g/cm3; water.h gives that of water
    Measured air_density = kRoomAir;
};

struct WeighedDensity {
    Measured density;       // g/cm3, corrected for the buoyancy of air
    double short_form = 0;  // W_air rho_liquid / (W_air - W_liquid), as many bench notes have it; reads high
    double air_effect = 0;  // short_form - density.value = rho_air (rho/rho_liquid - 1) to first order
};

// Nothing where the weights make no sense: one that is not positive, a piece not lighter in the liquid, a liquid not
// denser than the air, or an input that is not usable (usable.h). A piece that floats needs a sinker and is not
// covered.
std::optional<WeighedDensity> weigh_density(const Weighing& weighing);

// The same in water, whose density comes from its temperature in degrees Celsius (0 to 40).
std::optional<WeighedDensity> weigh_density_in_water(const Measured& in_air, const Measured& in_water,
                                                     const Measured& celsius);

// The density if `bubble` cm3 of the volume under the surface was air that clung to the piece: the upper end of what
// the readings allow, while weigh_density gives the lower. Nothing as above, for a negative bubble, and where the
// bubble would be the whole volume.
std::optional<double> density_without_trapped_air(const Weighing& weighing, double bubble);

// True mass in grams of a piece of the given density from the reading of a balance in air: W (1 - rho_air/rho_weights)
// / (1 - rho_air/density). Nothing unless 0 <= reading, 0 <= air_density < density and air_density < weights_density.
std::optional<double> mass_in_vacuum(double reading, double density, double air_density = kRoomAir.value,
                                     double weights_density = kStandardWeights);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_WEIGHING_H
