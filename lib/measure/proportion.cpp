#include "measure/proportion.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "measure/distribution.h"

namespace grainside::measure {
namespace {

constexpr std::uint64_t kMostCounted = std::uint64_t{1} << 53;  // beyond, a double does not know each whole number

double share_of(const Counted& counted) {
    return static_cast<double>(counted.count) / static_cast<double>(counted.of);
}

double normal_quantile(double confidence) {
    return two_sided_quantile(confidence, std::numeric_limits<double>::infinity());
}

// Half the distance of the limits where `share` of `number` is counted.
double half_width_of(double share, double number, double z) {
    return z * std::sqrt(share * (1 - share) / number + z * z / (4 * number * number)) / (1 + z * z / number);
}

}  // namespace

ShareLimits wilson_limits(const Counted& counted, double confidence) {
    if (counted.of == 0) return {};
    const double z = normal_quantile(confidence);
    const double number = static_cast<double>(counted.of);
    const double share = share_of(counted);
    const double middle = (share + z * z / (2 * number)) / (1 + z * z / number);
    const double half = half_width_of(share, number, z);
    // Rounding may put a limit a hair beyond the share itself, at both ends of the scale.
    return {counted.count == 0 ? 0 : std::clamp(middle - half, 0.0, share),
            counted.count == counted.of ? 1 : std::clamp(middle + half, share, 1.0)};
}

ShareLimits difference_limits(const Counted& one, const Counted& other, double confidence) {
    if (one.of == 0 || other.of == 0) return {-1, 1};
    const double a = share_of(one);
    const double b = share_of(other);
    const ShareLimits of_a = wilson_limits(one, confidence);
    const ShareLimits of_b = wilson_limits(other, confidence);
    return {a - b - std::hypot(a - of_a.low, of_b.high - b), a - b + std::hypot(of_a.high - a, b - of_b.low)};
}

std::uint64_t number_for_half_width(double share, double half_width, double confidence) {
    const double z = normal_quantile(confidence);
    const auto reaches = [&](std::uint64_t number) {
        return half_width_of(share, static_cast<double>(number), z) <= half_width;
    };
    // The half width falls as the number grows.
    std::uint64_t enough = 1;
    while (enough < kMostCounted && !reaches(enough)) enough *= 2;
    std::uint64_t short_of = enough / 2;
    while (short_of + 1 < enough) {
        const std::uint64_t middle = short_of + (enough - short_of) / 2;
        (reaches(middle) ? enough : short_of) = middle;
    }
    return enough;
}

}  // namespace grainside::measure
