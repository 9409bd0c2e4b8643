#include "measure/decision_risk.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

namespace grainside::measure {
namespace {

// Ten standard deviations leave out less than 1e-22 of a normal distribution.
constexpr double kNormalReach = 10;
// Within this many u of an acceptance limit the chance of acceptance changes; it is 0 or 1 to 1e-15 beyond.
constexpr double kTransitionReach = 8;
constexpr int kPanels = 1024;  // even

template <typename Function>
double simpson(const Function& function, double from, double to) {
    const double width = (to - from) / kPanels;
    double sum = function(from) + function(to);
    for (int i = 1; i < kPanels; ++i) sum += (i % 2 == 1 ? 4 : 2) * function(from + i * width);
    return sum * width / 3;
}

// The pieces of the spread's range, cut where the integrand jumps or turns.
std::vector<double> cuts_of(const ItemSpread& spread, double u, const Limit& tolerance, const Limit& acceptance) {
    std::vector<double> cuts = {spread.from, spread.to, spread.from + (spread.to - spread.from) / 2};
    const auto cut = [&](double place) {
        if (place > spread.from && place < spread.to) cuts.push_back(place);
    };
    for (const std::optional<double>& end : {tolerance.lower, tolerance.upper}) {
        if (end) cut(*end);
    }
    for (const std::optional<double>& end : {acceptance.lower, acceptance.upper}) {
        if (!end) continue;
        cut(*end - kTransitionReach * u);
        cut(*end);
        cut(*end + kTransitionReach * u);
    }
    std::sort(cuts.begin(), cuts.end());
    return cuts;
}

}  // namespace

ItemSpread normal_spread(double mean, double sd) {
    const double height = 1 / (sd * std::sqrt(2 * std::acos(-1.0)));
    return {.density =
                [=](double item) {
                    const double z = (item - mean) / sd;
                    return height * std::exp(-z * z / 2);
                },
            .from = mean - kNormalReach * sd,
            .to = mean + kNormalReach * sd};
}

GlobalRisk global_risk(const ItemSpread& spread, double u, const Limit& tolerance, const Limit& acceptance) {
    const std::vector<double> cuts = cuts_of(spread, u, tolerance, acceptance);
    const auto accepted = [&](double item) {
        return spread.density(item) * conformity_probability({.value = item, .u = u}, acceptance);
    };
    const auto rejected = [&](double item) {
        return spread.density(item) * failure_probability({.value = item, .u = u}, acceptance);
    };
    GlobalRisk risk;
    for (std::size_t i = 1; i < cuts.size(); ++i) {
        const double from = cuts[i - 1];
        const double to = cuts[i];
        if (conformity_probability({.value = from + (to - from) / 2}, tolerance) == 1) {
            risk.producer += simpson(rejected, from, to);
        } else {
            risk.consumer += simpson(accepted, from, to);
            risk.outside += simpson(spread.density, from, to);
        }
    }
    return risk;
}

}  // namespace grainside::measure
