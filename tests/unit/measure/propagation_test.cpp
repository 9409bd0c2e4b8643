// The worked examples of the guide stand in tests/published/measurement; here are properties and edges, each from the
// formula named beside it.
#include "measure/propagation.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <vector>

namespace grainside::measure {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

TEST(Sensitivities, AreTheDerivatives) {
    const std::vector<Measured> inputs = {{.value = 2, .u = 0.1}, {.value = 0.5, .u = 0.02}, {.value = 7, .u = 0}};
    const Model model = [](std::span<const double> x) { return std::exp(x[0]) * std::sin(x[1]) + x[2]; };
    const std::vector<double> slopes = sensitivities_of(model, inputs);
    ASSERT_EQ(slopes.size(), 3U);
    EXPECT_NEAR(slopes[0], std::exp(2.0) * std::sin(0.5), 1e-8);
    EXPECT_NEAR(slopes[1], std::exp(2.0) * std::cos(0.5), 1e-8);
    EXPECT_EQ(slopes[2], 0);
}

// An uncertainty below the spacing of doubles at the value moves nothing, and must not divide by zero.
TEST(Sensitivities, OfAnUncertaintyTooSmallToMatterAreZero) {
    const std::vector<Measured> inputs = {{.value = 1e20, .u = 1e-3}};
    const std::vector<double> slopes = sensitivities_of([](std::span<const double> x) { return 2 * x[0]; }, inputs);
    EXPECT_EQ(slopes.front(), 0);
}

// JCGM 100:2008, 5.1.2 with c = 1 and c = -1.
TEST(Propagate, AddsSquares) {
    const std::vector<Measured> inputs = {{.value = 1, .u = 3}, {.value = 1, .u = 4}};
    const Measured result = propagate(0, inputs, std::array{1.0, -1.0});
    EXPECT_DOUBLE_EQ(result.u, 5);
    EXPECT_EQ(result.dof, kInfinity);
}

// JCGM 100:2008, 5.2.2, note 1: with every correlation 1, uncertainties add as they are, with their signs.
TEST(Propagate, FullCorrelationAddsUncertainties) {
    const std::vector<Measured> inputs = {{.value = 1, .u = 3, .dof = 9}, {.value = 1, .u = 4, .dof = 5}};
    const std::array ones = {1.0, 1.0, 1.0, 1.0};
    EXPECT_DOUBLE_EQ(propagate(0, inputs, std::array{1.0, 1.0}, ones).u, 7);
    EXPECT_DOUBLE_EQ(propagate(0, inputs, std::array{1.0, -1.0}, ones).u, 1);
    EXPECT_EQ(propagate(0, inputs, std::array{1.0, 1.0}, ones).dof, 5);
    // What the output does not depend on lends it no degrees of freedom.
    EXPECT_EQ(propagate(0, inputs, std::array{1.0, 0.0}, ones).dof, 9);
    EXPECT_EQ(propagate(0, std::array{inputs[1], inputs[0]}, std::array{1.0, 1.0}, ones).dof, 5);
    EXPECT_EQ(propagate(0, inputs, std::array{4.0, -3.0}, ones).u, 0);
}

// JCGM 100:2008, G.4.1, note 1: the effective degrees of freedom lie between the fewest and the sum of all.
TEST(Propagate, DegreesOfFreedomLieBetweenFewestAndSum) {
    for (const double u : {0.01, 0.5, 1.0, 2.0, 50.0}) {
        const std::vector<Measured> inputs = {{.value = 0, .u = 1, .dof = 4}, {.value = 0, .u = u, .dof = 11}};
        const double dof = propagate(0, inputs, std::array{1.0, 1.0}).dof;
        EXPECT_GE(dof, 4) << u;
        EXPECT_LE(dof, 15 + 1e-9) << u;
    }
}

TEST(Propagate, ExactInputsGiveAnExactOutput) {
    const std::vector<Measured> inputs = {{.value = 2}, {.value = 3}};
    const Measured result = propagate([](std::span<const double> x) { return x[0] * x[1]; }, inputs);
    EXPECT_EQ(result.value, 6);
    EXPECT_EQ(result.u, 0);
    EXPECT_EQ(result.dof, kInfinity);
    EXPECT_EQ(expanded_uncertainty(result), 0);
}

TEST(Correlation, OfOutputsFollowsTheirCommonInputs) {
    const std::vector<Measured> inputs = {{.value = 0, .u = 1}, {.value = 0, .u = 1}};
    EXPECT_DOUBLE_EQ(correlation_of(inputs, std::array{1.0, 0.0}, std::array{2.0, 0.0}), 1);
    EXPECT_DOUBLE_EQ(correlation_of(inputs, std::array{1.0, 0.0}, std::array{-2.0, 0.0}), -1);
    EXPECT_DOUBLE_EQ(correlation_of(inputs, std::array{1.0, 1.0}, std::array{1.0, -1.0}), 0);
    EXPECT_DOUBLE_EQ(correlation_of(inputs, std::array{1.0, 1.0}, std::array{1.0, 0.0}), std::sqrt(0.5));
    EXPECT_EQ(correlation_of(inputs, std::array{0.0, 0.0}, std::array{1.0, 0.0}), 0);
}

// JCGM 100:2008, G.4.1: degrees of freedom that are not whole are cut to the next lower ones; table G.2.
TEST(CoverageFactor, CutsDegreesOfFreedom) {
    EXPECT_NEAR(coverage_factor(0.95, 16.9), 2.12, 0.005);
    EXPECT_EQ(coverage_factor(0.95, 16.9), coverage_factor(0.95, 16));
    EXPECT_NEAR(coverage_factor(0.95, kInfinity), 1.959964, 1e-6);
    EXPECT_GT(coverage_factor(0.95, 0.5), coverage_factor(0.95, 1));
    EXPECT_NEAR(expanded_uncertainty({.value = 1, .u = 2, .dof = 10}), 2 * 2.228, 0.001);
}

}  // namespace
}  // namespace grainside::measure
