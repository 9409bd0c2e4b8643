// The worked examples of JCGM 101:2008 stand in tests/published/measurement; here are the moments and quantiles that
// each distribution has by its formula, and the procedure's edges.
#include "measure/monte_carlo.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

namespace grainside::measure {
namespace {

double first_of(std::span<const double> x) {
    return x[0];
}

// Where two digits of a u between 1 and 9.9 have settled, every result is good to 0.05 (JCGM 101:2008, 7.9.2), which is
// the tolerance below.
constexpr MonteCarloOptions kTwoDigits = {.seed = 7, .probability = 0.95, .digits = 2, .max_trials = 1'000'000};

TEST(MonteCarlo, DrawsNormal) {
    const std::vector<Draw> inputs = {{{.value = 5, .u = 2}, Distribution::normal}};
    const auto result = monte_carlo(first_of, inputs, kTwoDigits);
    ASSERT_TRUE(result);
    EXPECT_TRUE(result->stabilised);
    EXPECT_NEAR(result->mean, 5, 0.05);
    EXPECT_NEAR(result->u, 2, 0.05);
    EXPECT_NEAR(result->symmetric.low, 5 - 2 * 1.959964, 0.05);
    EXPECT_NEAR(result->symmetric.high, 5 + 2 * 1.959964, 0.05);
}

// Half width u sqrt 3; the symmetric 95 % interval is 95 % of the whole width.
TEST(MonteCarlo, DrawsRectangular) {
    const std::vector<Draw> inputs = {{{.value = 5, .u = 1}, Distribution::rectangular}};
    const auto result = monte_carlo(first_of, inputs, kTwoDigits);
    ASSERT_TRUE(result);
    EXPECT_NEAR(result->mean, 5, 0.05);
    EXPECT_NEAR(result->u, 1, 0.05);
    EXPECT_NEAR(result->symmetric.low, 5 - 0.95 * std::sqrt(3.0), 0.05);
    EXPECT_NEAR(result->symmetric.high, 5 + 0.95 * std::sqrt(3.0), 0.05);
}

// Table G.2 of JCGM 100:2008 for the interval; the variance of t is dof / (dof - 2).
TEST(MonteCarlo, DrawsStudentT) {
    const std::vector<Draw> inputs = {draw_of({.value = 0, .u = 1, .dof = 10})};
    EXPECT_EQ(inputs[0].distribution, Distribution::student_t);
    const auto result = monte_carlo(first_of, inputs, kTwoDigits);
    ASSERT_TRUE(result);
    EXPECT_TRUE(result->stabilised);
    EXPECT_NEAR(result->u, std::sqrt(10.0 / 8), 0.05);
    EXPECT_NEAR(result->symmetric.high, 2.228, 0.05);
    EXPECT_NEAR(result->symmetric.low, -2.228, 0.05);
}

// A t with one degree of freedom has no moments: the interval (12.71, table G.2) holds, u never settles.
TEST(MonteCarlo, SaysThatItHasNotStabilised) {
    const std::vector<Draw> inputs = {draw_of({.value = 0, .u = 1, .dof = 1})};
    const auto result = monte_carlo(first_of, inputs, {.seed = 3, .digits = 1, .max_trials = 200'000});
    ASSERT_TRUE(result);
    EXPECT_FALSE(result->stabilised);
    EXPECT_EQ(result->trials, 200'000U);
    EXPECT_NEAR(result->symmetric.high, 12.71, 0.6);
}

TEST(MonteCarlo, SameSeedSameResult) {
    const std::vector<Draw> inputs = {draw_of({.value = 1, .u = 0.1}), draw_of({.value = 2, .u = 0.3, .dof = 6})};
    const Model model = [](std::span<const double> x) { return x[0] / x[1]; };
    const auto first = monte_carlo(model, inputs, {.seed = 11});
    const auto again = monte_carlo(model, inputs, {.seed = 11});
    const auto other = monte_carlo(model, inputs, {.seed = 12});
    ASSERT_TRUE(first && again && other);
    EXPECT_EQ(first->mean, again->mean);
    EXPECT_EQ(first->symmetric.low, again->symmetric.low);
    EXPECT_EQ(first->trials, again->trials);
    EXPECT_NE(first->mean, other->mean);
}

// Worked out apart from this library, in another language: the generator from its published recurrence (M. Matsumoto
// and T. Nishimura; its 10000th output is the one in the C++ standard, [rand.predef]), the polar forms from their
// papers.
TEST(MonteCarlo, DrawsTheSameOnEveryMachine) {
    const std::vector<Draw> inputs = {draw_of({.value = 10, .u = 0.5}),
                                      {{.value = 1, .u = 0.1}, Distribution::rectangular},
                                      draw_of({.value = 0, .u = 0.3, .dof = 6})};
    const auto result = monte_carlo([](std::span<const double> x) { return x[0] * x[1] + x[2]; }, inputs,
                                    {.seed = 1, .max_trials = 10'000});
    ASSERT_TRUE(result);
    EXPECT_EQ(result->trials, 10'000U);
    EXPECT_NEAR(result->mean, 9.990982387804557, 1e-11);
    EXPECT_NEAR(result->u, 1.1781161869554857, 1e-11);
    EXPECT_NEAR(result->symmetric.low, 7.8847650214418135, 1e-11);
    EXPECT_NEAR(result->symmetric.high, 12.21761535276254, 1e-11);
}

TEST(MonteCarlo, ExactInputsGiveAnExactOutput) {
    const std::vector<Draw> inputs = {draw_of({.value = 3})};
    const auto result = monte_carlo(first_of, inputs);
    ASSERT_TRUE(result);
    EXPECT_TRUE(result->stabilised);
    EXPECT_NEAR(result->mean, 3, 1e-14);
    EXPECT_NEAR(result->u, 0, 1e-14);
    EXPECT_EQ(result->symmetric.low, 3);
    EXPECT_EQ(result->shortest.high, 3);
}

TEST(MonteCarlo, RefusesAModelThatFails) {
    const std::vector<Draw> inputs = {draw_of({.value = 1, .u = 1})};
    EXPECT_FALSE(monte_carlo([](std::span<const double> x) { return std::log(x[0]); }, inputs));
    EXPECT_FALSE(monte_carlo([](std::span<const double>) { return std::nan(""); }, inputs));
    EXPECT_FALSE(monte_carlo([](std::span<const double>) { return std::numeric_limits<double>::infinity(); }, inputs));
}

// An exponential distribution of mean 1, by its inverse: the shortest 95 % interval begins at 0 and ends at -ln 0.05.
TEST(MonteCarlo, ShortestIntervalLeansToTheSteepSide) {
    const std::vector<Draw> inputs = {{{.value = 0.5, .u = 0.5 / std::sqrt(3.0)}, Distribution::rectangular}};
    const auto result = monte_carlo([](std::span<const double> x) { return -std::log(x[0]); }, inputs);
    ASSERT_TRUE(result);
    EXPECT_NEAR(result->mean, 1, 0.05);
    EXPECT_NEAR(result->shortest.low, 0, 0.02);
    EXPECT_NEAR(result->shortest.high, -std::log(0.05), 0.05);
    EXPECT_NEAR(result->symmetric.low, -std::log(0.975), 0.05);
    EXPECT_NEAR(result->symmetric.high, -std::log(0.025), 0.08);
}

TEST(MonteCarlo, KeepsToItsTrials) {
    const std::vector<Draw> inputs = {draw_of({.value = 0, .u = 1})};
    for (const std::size_t most : {std::size_t{2}, std::size_t{3}, std::size_t{9'999}, std::size_t{10'001}}) {
        const auto result = monte_carlo(first_of, inputs, {.seed = 5, .max_trials = most});
        ASSERT_TRUE(result);
        EXPECT_LE(result->trials, most);
        EXPECT_FALSE(result->stabilised);
        EXPECT_LE(result->symmetric.low, result->symmetric.high);
    }
}

}  // namespace
}  // namespace grainside::measure
