#include "measure/water.h"

#include <span>

#include "measure/propagation.h"
#include "measure/usable.h"

namespace grainside::measure {
namespace {

constexpr double kLowest = 0;
constexpr double kHighest = 40;

// a1 to a5 of Tanaka 2001; copies of the paper circulate with digits lost in a1 and with the a5 of tap water.
constexpr double kA1 = -3.983035;
constexpr double kA2 = 301.797;
constexpr double kA3 = 522528.9;
constexpr double kA4 = 69.34881;
constexpr double kA5 = 0.999974950;  // g/cm3

bool in_range(double celsius) {
    return celsius >= kLowest && celsius <= kHighest;
}

}  // namespace

std::optional<double> water_density(double celsius) {
    if (!in_range(celsius)) return std::nullopt;
    const double from_peak = celsius + kA1;
    return kA5 * (1 - from_peak * from_peak * (celsius + kA2) / (kA3 * (celsius + kA4)));
}

std::optional<double> water_density_slope(double celsius) {
    if (!in_range(celsius)) return std::nullopt;
    const double from_peak = celsius + kA1;
    const double ratio = (celsius + kA2) / (celsius + kA4);
    const double ratio_slope = (kA4 - kA2) / ((celsius + kA4) * (celsius + kA4));
    return -kA5 / kA3 * (2 * from_peak * ratio + from_peak * from_peak * ratio_slope);
}

std::optional<Measured> water_density(const Measured& celsius) {
    const std::optional<double> density = water_density(celsius.value);
    const std::optional<double> slope = water_density_slope(celsius.value);
    if (!density || !slope || !is_usable(celsius)) return std::nullopt;
    return propagate(*density, std::span(&celsius, 1), std::span(&*slope, 1));
}

}  // namespace grainside::measure
