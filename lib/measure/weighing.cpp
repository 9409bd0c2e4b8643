#include "measure/weighing.h"

#include <array>
#include <cmath>

#include "measure/propagation.h"
#include "measure/usable.h"
#include "measure/water.h"

namespace grainside::measure {
namespace {

bool makes_sense(const Weighing& weighing) {
    return is_usable(weighing.in_air) && is_usable(weighing.in_liquid) && is_usable(weighing.liquid_density) &&
           is_usable(weighing.air_density) && weighing.in_liquid.value > 0 &&
           weighing.in_air.value > weighing.in_liquid.value && weighing.air_density.value >= 0 &&
           weighing.liquid_density.value > weighing.air_density.value;
}

}  // namespace

std::optional<WeighedDensity> weigh_density(const Weighing& weighing) {
    if (!makes_sense(weighing)) return std::nullopt;
    const double in_air = weighing.in_air.value;
    const double in_liquid = weighing.in_liquid.value;
    const double lift = in_air - in_liquid;
    const double ratio = in_air / lift;
    const double step = weighing.liquid_density.value - weighing.air_density.value;
    const double density = ratio * step + weighing.air_density.value;
    const std::array inputs = {weighing.in_air, weighing.in_liquid, weighing.liquid_density, weighing.air_density};
    const std::array sensitivities = {-step * in_liquid / (lift * lift), step * in_air / (lift * lift), ratio,
                                      1 - ratio};
    WeighedDensity result;
    result.density = propagate(density, inputs, sensitivities);
    result.short_form = ratio * weighing.liquid_density.value;
    result.air_effect = result.short_form - density;
    return result;
}

std::optional<WeighedDensity> weigh_density_in_water(const Measured& in_air, const Measured& in_water,
                                                     const Measured& celsius) {
    const std::optional<Measured> water = water_density(celsius);
    if (!water) return std::nullopt;
    return weigh_density({.in_air = in_air, .in_liquid = in_water, .liquid_density = *water});
}

std::optional<double> density_without_trapped_air(const Weighing& weighing, double bubble) {
    if (!makes_sense(weighing) || !(bubble >= 0)) return std::nullopt;
    const double step = weighing.liquid_density.value - weighing.air_density.value;
    const double lift = weighing.in_air.value - weighing.in_liquid.value - bubble * step;
    if (!(lift > 0)) return std::nullopt;
    return weighing.in_air.value * step / lift + weighing.air_density.value;
}

std::optional<double> mass_in_vacuum(double reading, double density, double air_density, double weights_density) {
    if (!std::isfinite(reading) || !std::isfinite(density) || !std::isfinite(weights_density)) return std::nullopt;
    if (!(reading >= 0) || !(air_density >= 0) || !(air_density < density) || !(air_density < weights_density)) {
        return std::nullopt;
    }
    return reading * (1 - air_density / weights_density) / (1 - air_density / density);
}

}  // namespace grainside::measure
