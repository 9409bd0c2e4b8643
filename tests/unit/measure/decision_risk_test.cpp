// The worked examples stand in tests/published/measurement; here are identities that hold for every process.
#include "measure/decision_risk.h"

#include <gtest/gtest.h>

#include <cmath>

namespace grainside::measure {
namespace {

// A process symmetric about the middle of its tolerance errs alike on both sides, and a perfect measurement not at all.
TEST(GlobalRisk, VanishesWithTheUncertainty) {
    const Limit tolerance = {.lower = -2.0, .upper = 2.0};
    const GlobalRisk risk = global_risk(normal_spread(0, 1), 1e-7, tolerance, tolerance);
    EXPECT_NEAR(risk.consumer, 0, 1e-7);
    EXPECT_NEAR(risk.producer, 0, 1e-7);
    EXPECT_NEAR(risk.outside, std::erfc(2 / std::sqrt(2.0)), 1e-9);
}

// What is found within acceptance is spread with sd^2 + u^2: accepted = 1 - outside + consumer - producer.
TEST(GlobalRisk, AddsUpToWhatIsAccepted) {
    const Limit tolerance = {.lower = 9.0, .upper = 10.0};
    const Limit acceptance = {.lower = 9.1, .upper = 9.8};
    for (const double u : {0.02, 0.1, 0.5}) {
        const GlobalRisk risk = global_risk(normal_spread(9.5, 0.3), u, tolerance, acceptance);
        const double accepted = conformity_probability({.value = 9.5, .u = std::hypot(0.3, u)}, acceptance);
        EXPECT_NEAR(1 - risk.outside + risk.consumer - risk.producer, accepted, 1e-9) << u;
    }
}

// For one limit at the middle of the process, both risks are the quarter angle atan(u / sd) / (2 pi) (two jointly
// normal values on different sides of their means).
TEST(GlobalRisk, AtTheMiddleIsAnAngle) {
    const Limit at_most = {.lower = {}, .upper = 0.0};
    const GlobalRisk risk = global_risk(normal_spread(0, 1), 0.5, at_most, at_most);
    const double angle = std::atan(0.5) / (2 * std::acos(-1.0));
    EXPECT_NEAR(risk.consumer, angle, 1e-9);
    EXPECT_NEAR(risk.producer, angle, 1e-9);
}

}  // namespace
}  // namespace grainside::measure
