#include "measure/blurred_range.h"

#include <cmath>
#include <limits>
#include <numbers>

#include "measure/usable.h"

namespace grainside::measure {
namespace {

constexpr double kNever = -std::numeric_limits<double>::infinity();
constexpr double kFarTail = 30;      // from here on the series of the tail is exact to 1e-11
constexpr double kThinSlice = 1e-4;  // a slice this thin is taken as its middle height times its width

double log_normal_density(double z) {
    return -0.5 * z * z - 0.5 * std::log(2 * std::numbers::pi);
}

// log of the chance that a standard normal value exceeds z >= 0.
double log_upper_tail(double z) {
    if (z < kFarTail) return std::log(0.5 * std::erfc(z / std::numbers::sqrt2));
    if (std::isinf(z)) return kNever;
    const double w = 1 / (z * z);
    return log_normal_density(z) - std::log(z) + std::log1p(-w * (1 - w * (3 - w * (15 - w * 105))));
}

// log of sinh(z)/z, which is even.
double log_sinh_ratio(double z) {
    const double size = std::fabs(z);
    if (size < 1e-4) return size * size / 6;
    return size + std::log1p(-std::exp(-2 * size)) - std::log(2 * size);
}

// log of Phi(to) - Phi(from), from < to.
double log_slice(double from, double to) {
    if (to - from < kThinSlice) {
        const double middle = from + (to - from) / 2;
        return log_normal_density(middle) + std::log(to - from) + log_sinh_ratio(middle * (to - from) / 2);
    }
    if (from > 0 || to < 0) {
        const double near_side = from > 0 ? from : -to;
        const double far_side = from > 0 ? to : -from;
        const double reach = log_upper_tail(near_side);
        if (reach == kNever) return kNever;
        return reach + std::log1p(-std::exp(log_upper_tail(far_side) - reach));
    }
    return std::log(0.5 * (std::erf(to / std::numbers::sqrt2) - std::erf(from / std::numbers::sqrt2)));
}

bool contains(const Range& range, double value) {
    return value >= range.low && value <= range.high;
}

}  // namespace

std::optional<double> log_likelihood(const Measured& value, const Range& range) {
    if (!is_usable(value) || !std::isfinite(range.low) || !std::isfinite(range.high) || range.low > range.high) {
        return std::nullopt;
    }
    const double width = range.high - range.low;
    if (value.u == 0) {
        if (!contains(range, value.value)) return kNever;
        return width > 0 ? -std::log(width) : 0;
    }
    if (!(width > 0)) return log_normal_density((value.value - range.low) / value.u) - std::log(value.u);
    const double from = (range.low - value.value) / value.u;
    const double to = (range.high - value.value) / value.u;
    // The bounds may fall on the same double, seen from far away or through a wide blur: then the range has no width.
    if (!(from < to)) return log_normal_density(from) - std::log(value.u);
    return log_slice(from, to) - std::log(width);
}

std::optional<double> log_probability(const Measured& value, const Range& range) {
    if (!is_usable(value) || !(range.low <= range.high)) return std::nullopt;
    if (value.u == 0) return contains(range, value.value) ? 0 : kNever;
    const double from = (range.low - value.value) / value.u;
    const double to = (range.high - value.value) / value.u;
    return from < to ? log_slice(from, to) : kNever;
}

}  // namespace grainside::measure
