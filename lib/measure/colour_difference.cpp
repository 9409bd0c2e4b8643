#include "measure/colour_difference.h"

#include <cmath>
#include <numbers>

namespace grainside::measure {
namespace {

constexpr double kRadiansPerDegree = std::numbers::pi / 180;

double angle_of(double a, double b) {
    if (a == 0 && b == 0) return 0;
    const double degrees = std::atan2(b, a) / kRadiansPerDegree;
    const double positive = degrees < 0 ? degrees + 360 : degrees;
    return positive < 360 ? positive : 0;  // a tiny negative angle rounds up to the full turn
}

double cosine(double degrees) {
    return std::cos(degrees * kRadiansPerDegree);
}

double sine(double degrees) {
    return std::sin(degrees * kRadiansPerDegree);
}

// sqrt(c^7 / (c^7 + 25^7)), 0 to 1; written so that a large chroma does not run out of range. Without a chroma 25 / c
// is infinite, and the share 0.
double chroma_share(double c) {
    return 1 / std::sqrt(1 + std::pow(25 / c, 7));
}

// From `first` to `second` by the shorter way, -180 to 180.
double turn(double first, double second) {
    const double difference = second - first;
    if (difference > 180) return difference - 360;
    if (difference < -180) return difference + 360;
    return difference;
}

}  // namespace

double chroma(const Lab& colour) {
    return std::hypot(colour.a, colour.b);
}

double hue(const Lab& colour) {
    return angle_of(colour.a, colour.b);
}

double mean_hue(double first, double second) {
    const double sum = first + second;
    if (std::fabs(first - second) <= 180) return sum / 2;
    return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
}

double difference_cielab(const Lab& first, const Lab& second) {
    return std::hypot(second.L - first.L, second.a - first.a, second.b - first.b);
}

double hue_difference(const Lab& first, const Lab& second) {
    const double cross = first.a * second.b - first.b * second.a;
    const double dot = first.a * second.a + first.b * second.b;
    // 2 sqrt(C1 C2) sin(turn / 2): no difference of nearly equal squares, as the definition has it.
    const double radius = std::sqrt(chroma(first) * chroma(second));
    return 2 * radius * std::sin(std::atan2(cross, dot) / 2);
}

double difference_ciede2000(const Lab& first, const Lab& second) {
    const double stretch = 1 + 0.5 * (1 - chroma_share((chroma(first) + chroma(second)) / 2));
    const double a1 = stretch * first.a;
    const double a2 = stretch * second.a;
    const double c1 = std::hypot(a1, first.b);
    const double c2 = std::hypot(a2, second.b);
    const double h1 = angle_of(a1, first.b);
    const double h2 = angle_of(a2, second.b);
    const bool both_have_hue = c1 * c2 != 0;

    const double lightness_step = second.L - first.L;
    const double chroma_step = c2 - c1;
    const double hue_step = both_have_hue ? 2 * std::sqrt(c1 * c2) * sine(turn(h1, h2) / 2) : 0;

    const double c = (c1 + c2) / 2;
    const double h = both_have_hue ? mean_hue(h1, h2) : h1 + h2;
    const double from_middle = ((first.L + second.L) / 2 - 50) * ((first.L + second.L) / 2 - 50);
    const double t =
        1 - 0.17 * cosine(h - 30) + 0.24 * cosine(2 * h) + 0.32 * cosine(3 * h + 6) - 0.20 * cosine(4 * h - 63);
    const double lightness = lightness_step / (1 + 0.015 * from_middle / std::sqrt(20 + from_middle));
    const double chromatic = chroma_step / (1 + 0.045 * c);
    const double hued = hue_step / (1 + 0.015 * c * t);

    const double from_blue = (h - 275) / 25;
    const double rotation = -sine(60 * std::exp(-from_blue * from_blue)) * 2 * chroma_share(c);
    const double squared = lightness * lightness + chromatic * chromatic + hued * hued + rotation * chromatic * hued;
    return std::sqrt(squared > 0 ? squared : 0);
}

}  // namespace grainside::measure
