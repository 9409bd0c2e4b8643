#include "measure/conformity.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "measure/distribution.h"

namespace grainside::measure {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

bool within(double value, const Limit& limit) {
    if (limit.lower && (limit.lower_inclusive ? value < *limit.lower : value <= *limit.lower)) return false;
    return !limit.upper || (limit.upper_inclusive ? value <= *limit.upper : value < *limit.upper);
}

// The ends as distances from the value in standard uncertainties.
struct Reach {
    double lower;
    double upper;
};

// REQUIRES: measured.u > 0.
Reach reach_of(const Measured& measured, const Limit& limit) {
    return {limit.lower ? (*limit.lower - measured.value) / measured.u : -kInfinity,
            limit.upper ? (*limit.upper - measured.value) / measured.u : kInfinity};
}

// How far the value lies inside the nearer end; negative outside.
double margin_inside(double value, const Limit& limit) {
    double margin = kInfinity;
    if (limit.lower) margin = value - *limit.lower;
    if (limit.upper) margin = std::min(margin, *limit.upper - value);
    return margin;
}

}  // namespace

std::string_view name_of(DecisionRule rule) noexcept {
    switch (rule) {
        case DecisionRule::simple_acceptance:
            return "simple-acceptance";
        case DecisionRule::guarded_acceptance:
            return "guarded-acceptance";
        case DecisionRule::guarded_rejection:
            return "guarded-rejection";
        case DecisionRule::both_guarded:
            return "both-guarded";
    }
    return {};
}

std::string_view name_of(Decision decision) noexcept {
    switch (decision) {
        case Decision::conforms:
            return "conforms";
        case Decision::fails:
            return "fails";
        case Decision::undecided:
            return "undecided";
    }
    return {};
}

double conformity_probability(const Measured& measured, const Limit& limit) {
    if (measured.u == 0) return within(measured.value, limit) ? 1 : 0;
    const Reach reach = reach_of(measured, limit);
    // A difference of two probabilities is taken in the tail where both are small.
    const double inside =
        reach.lower > 0 ? probability_above(reach.lower, measured.dof) - probability_above(reach.upper, measured.dof)
                        : probability_below(reach.upper, measured.dof) - probability_below(reach.lower, measured.dof);
    return std::clamp(inside, 0.0, 1.0);
}

double failure_probability(const Measured& measured, const Limit& limit) {
    if (measured.u == 0) return within(measured.value, limit) ? 0 : 1;
    const Reach reach = reach_of(measured, limit);
    const double outside = probability_below(reach.lower, measured.dof) + probability_above(reach.upper, measured.dof);
    return std::clamp(outside, 0.0, 1.0);
}

double guard_band(const Measured& measured, double guard_factor) {
    return guard_factor * 2 * measured.u;
}

Decision decide(const Measured& measured, const Limit& limit, DecisionRule rule, double guard_factor) {
    const double w = guard_band(measured, guard_factor);
    if (rule == DecisionRule::simple_acceptance || w == 0) {
        return within(measured.value, limit) ? Decision::conforms : Decision::fails;
    }
    // Decimals are not exact in a double: 0.17 - 0.15 is a hair more than 0.02, and that hair decides nothing.
    constexpr double kRounding = 1e-12;
    const double margin = margin_inside(measured.value, limit);
    const double beyond = w + kRounding * std::fabs(measured.value);
    const bool surely_inside = margin > beyond;
    const bool surely_outside = -margin > beyond;
    if (surely_inside || (rule == DecisionRule::guarded_rejection && !surely_outside)) return Decision::conforms;
    if (surely_outside || rule == DecisionRule::guarded_acceptance) return Decision::fails;
    return Decision::undecided;
}

std::optional<Limit> acceptance_interval(const Limit& tolerance, double w) {
    Limit acceptance = tolerance;
    if (acceptance.lower) *acceptance.lower += w;
    if (acceptance.upper) *acceptance.upper -= w;
    if (acceptance.lower && acceptance.upper && *acceptance.lower > *acceptance.upper) return std::nullopt;
    return acceptance;
}

}  // namespace grainside::measure
