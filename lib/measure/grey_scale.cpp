#include "measure/grey_scale.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <span>

#include "measure/propagation.h"
#include "measure/usable.h"

namespace grainside::measure {
namespace {

constexpr double kWorst = 1;
constexpr double kBest = 5;

constexpr double kBranch = 3.4;  // both formulas of clause 8 give grade 3 here
constexpr double kLinearScale = 1.7;
constexpr double kLogarithmScale = 0.85;

constexpr double kStainLinear = 0.23;
constexpr double kStainBranch = 4;
constexpr double kStainOffset = 6.1;
constexpr double kStainLogarithm = 1.45;

constexpr std::array<std::string_view, 9> kTexts = {"1", "1-2", "2", "2-3", "3", "3-4", "4", "4-5", "5"};

// Below the first limit the grade is 5, from the last one on it is 1.
constexpr std::array<double, 8> kTable = {0.40, 1.25, 2.10, 2.95, 4.10, 5.80, 8.20, 11.60};

// exp(-x) of clause 7.2, 1 at the blue hue of 280 degrees.
double blue_weight(double hue_degrees) {
    double distance = std::fabs(hue_degrees - 280);
    if (distance > 180) distance = 360 - distance;
    const double scaled = distance / 30;
    return std::exp(-scaled * scaled);
}

double hue_between(const Lab& reference, const Lab& specimen) {
    if (chroma(reference) == 0) return hue(specimen);
    if (chroma(specimen) == 0) return hue(reference);
    return mean_hue(hue(reference), hue(specimen));
}

bool is_difference(double value) {
    return std::isfinite(value) && value >= 0;
}

double stain_slope(double difference) {
    return kBest - kStainLinear * difference > kStainBranch ? -kStainLinear : -kStainLogarithm / difference;
}

}  // namespace

std::string_view half_step_text(HalfStep step) {
    return kTexts[static_cast<std::size_t>(step)];
}

double half_step_value(HalfStep step) {
    return kWorst + static_cast<double>(step) / 2;
}

double grey_scale_difference(const Lab& reference, const Lab& specimen) {
    const double mean_chroma = (chroma(reference) + chroma(specimen)) / 2;
    const double lightness = specimen.L - reference.L;
    const double chroma_step = chroma(specimen) - chroma(reference);
    const double correction = chroma_step * mean_chroma * blue_weight(hue_between(reference, specimen)) / 100;
    const double chroma_damping = 20 * mean_chroma / 1000;
    const double hue_damping = 10 * mean_chroma / 1000;
    const double chromatic = (chroma_step - correction) / (1 + chroma_damping * chroma_damping);
    const double hued = (hue_difference(reference, specimen) - correction) / (1 + hue_damping * hue_damping);
    return std::hypot(lightness, chromatic, hued);
}

std::optional<double> grey_scale_rating(double difference) {
    if (!is_difference(difference)) return std::nullopt;
    if (difference <= kBranch) return kBest - difference / kLinearScale;
    return std::max(kWorst, kBest - std::log2(difference / kLogarithmScale));
}

std::optional<Measured> grey_scale_rating(const Measured& difference) {
    const std::optional<double> rating = grey_scale_rating(difference.value);
    if (!rating || !is_usable(difference)) return std::nullopt;
    const double slope = difference.value <= kBranch ? -1 / kLinearScale : -1 / (difference.value * std::numbers::ln2);
    return propagate(*rating, std::span(&difference, 1), std::span(&slope, 1));
}

std::optional<HalfStep> grey_scale_half_step(double difference) {
    if (!is_difference(difference)) return std::nullopt;
    const auto passed = std::upper_bound(kTable.begin(), kTable.end(), difference) - kTable.begin();
    return static_cast<HalfStep>(static_cast<std::ptrdiff_t>(HalfStep::grade_5) - passed);
}

double staining_difference(const Lab& unstained, const Lab& stained) {
    const double without_lightness = std::hypot(stained.a - unstained.a, stained.b - unstained.b);
    return difference_cielab(unstained, stained) - 0.4 * without_lightness;
}

std::optional<double> staining_rating(double difference) {
    if (!is_difference(difference)) return std::nullopt;
    const double linear = kBest - kStainLinear * difference;
    if (linear > kStainBranch) return linear;
    return std::max(kWorst, kStainOffset - kStainLogarithm * std::log(difference));
}

std::optional<Measured> staining_rating(const Measured& difference) {
    const std::optional<double> rating = staining_rating(difference.value);
    if (!rating || !is_usable(difference)) return std::nullopt;
    const double slope = stain_slope(difference.value);
    return propagate(*rating, std::span(&difference, 1), std::span(&slope, 1));
}

std::optional<HalfStep> staining_half_step(double rating) {
    if (!(rating >= kWorst && rating <= kBest)) return std::nullopt;
    const double hundredths = std::round(rating * 100);
    const auto above = static_cast<int>((hundredths - 75) / 50);  // 125 opens 1-2, 175 opens 2, 475 opens 5
    return static_cast<HalfStep>(std::clamp(above, 0, 8));
}

}  // namespace grainside::measure
