#include "measure/propagation.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

#include "measure/distribution.h"

namespace grainside::measure {
namespace {

// An eighth of u is near enough for a slope and wide enough to keep half the digits.
constexpr double kStepShare = 0.125;

double covariance(std::span<const double> first, std::span<const double> second, Correlations correlations) {
    double sum = 0;
    for (std::size_t i = 0; i < first.size(); ++i) {
        if (correlations.empty()) {
            sum += first[i] * second[i];
            continue;
        }
        for (std::size_t j = 0; j < second.size(); ++j) {
            sum += first[i] * second[j] * correlations[i * second.size() + j];
        }
    }
    return sum;
}

// c_i u(x_i), with the sign of c_i.
std::vector<double> contributions_of(std::span<const Measured> inputs, std::span<const double> sensitivities) {
    std::vector<double> contributions;
    contributions.reserve(inputs.size());
    for (std::size_t i = 0; i < inputs.size(); ++i) contributions.push_back(sensitivities[i] * inputs[i].u);
    return contributions;
}

double welch_satterthwaite(double u, std::span<const double> contributions, std::span<const Measured> inputs) {
    double sum = 0;
    for (std::size_t i = 0; i < inputs.size(); ++i) sum += std::pow(contributions[i] / u, 4) / inputs[i].dof;
    return 1 / sum;
}

double fewest_dof(std::span<const double> contributions, std::span<const Measured> inputs) {
    double fewest = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        if (contributions[i] != 0) fewest = std::min(fewest, inputs[i].dof);
    }
    return fewest;
}

}  // namespace

std::vector<double> sensitivities_of(const Model& model, std::span<const Measured> inputs) {
    std::vector<double> at;
    at.reserve(inputs.size());
    for (const Measured& input : inputs) at.push_back(input.value);
    std::vector<double> slopes;
    slopes.reserve(inputs.size());
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        if (inputs[i].u == 0) {
            slopes.push_back(0);
            continue;
        }
        const auto slope_over = [&](double step) {
            // The two ends as doubles may lie closer together or wider apart than two steps.
            const double above = inputs[i].value + step;
            const double below = inputs[i].value - step;
            at[i] = above;
            const double high = model(at);
            at[i] = below;
            const double low = model(at);
            at[i] = inputs[i].value;
            return above == below ? 0 : (high - low) / (above - below);
        };
        const double step = kStepShare * inputs[i].u;
        slopes.push_back((4 * slope_over(step / 2) - slope_over(step)) / 3);
    }
    return slopes;
}

Measured propagate(double value, std::span<const Measured> inputs, std::span<const double> sensitivities,
                   Correlations correlations) {
    const std::vector<double> contributions = contributions_of(inputs, sensitivities);
    // Correlations that cancel may leave a rounding error below zero.
    const double u = std::sqrt(std::max(0.0, covariance(contributions, contributions, correlations)));
    if (u == 0) return {.value = value};
    return {.value = value,
            .u = u,
            .dof = correlations.empty() ? welch_satterthwaite(u, contributions, inputs)
                                        : fewest_dof(contributions, inputs)};
}

Measured propagate(const Model& model, std::span<const Measured> inputs, Correlations correlations) {
    std::vector<double> at;
    at.reserve(inputs.size());
    for (const Measured& input : inputs) at.push_back(input.value);
    return propagate(model(at), inputs, sensitivities_of(model, inputs), correlations);
}

double correlation_of(std::span<const Measured> inputs, std::span<const double> first, std::span<const double> second,
                      Correlations correlations) {
    const std::vector<double> of_first = contributions_of(inputs, first);
    const std::vector<double> of_second = contributions_of(inputs, second);
    const double square = covariance(of_first, of_first, correlations) * covariance(of_second, of_second, correlations);
    if (square <= 0) return 0;
    return std::clamp(covariance(of_first, of_second, correlations) / std::sqrt(square), -1.0, 1.0);
}

double coverage_factor(double probability, double dof) {
    return two_sided_quantile(probability, dof < 1 ? dof : std::floor(dof));
}

double expanded_uncertainty(const Measured& measured, double probability) {
    if (measured.u == 0) return 0;
    return coverage_factor(probability, measured.dof) * measured.u;
}

}  // namespace grainside::measure
