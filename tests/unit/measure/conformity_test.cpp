// Decision zones: ILAC-G8:09/2019 (a page that explains it: tolerance +-0.003, U 0.0010, acceptance limit +-0.002;
// 0.0017 passes, 0.0025 is in doubt; seen). Probabilities of published examples stand in tests/published/measurement.
#include "measure/conformity.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <string_view>

namespace grainside::measure {
namespace {

constexpr Limit kTolerance = {.lower = -0.003, .upper = 0.003};
constexpr Limit kAtMost = {.lower = {}, .upper = 10.0};
constexpr Limit kBelow = {.lower = {}, .upper = 10.0, .upper_inclusive = false};
constexpr Limit kAtLeast = {.lower = 10.0, .upper = {}};
constexpr Limit kAbove = {.lower = 10.0, .upper = {}, .lower_inclusive = false};

struct Row {
    std::string_view name;
    Measured measured;
    Limit limit;
    DecisionRule rule;
    Decision want;
};

constexpr auto kSimple = DecisionRule::simple_acceptance;
constexpr auto kAccept = DecisionRule::guarded_acceptance;
constexpr auto kReject = DecisionRule::guarded_rejection;
constexpr auto kBoth = DecisionRule::both_guarded;
constexpr auto kConforms = Decision::conforms;
constexpr auto kFails = Decision::fails;
constexpr auto kUndecided = Decision::undecided;

const Row kRows[] = {
    {"passes_the_published_example", {.value = 0.0017, .u = 0.0005}, kTolerance, kBoth, kConforms},
    {"doubtful_in_the_published_example", {.value = 0.0025, .u = 0.0005}, kTolerance, kBoth, kUndecided},
    {"doubtful_outside", {.value = 0.0035, .u = 0.0005}, kTolerance, kBoth, kUndecided},
    {"fails_beyond", {.value = 0.0041, .u = 0.0005}, kTolerance, kBoth, kFails},
    {"lower_side_passes", {.value = -0.0017, .u = 0.0005}, kTolerance, kBoth, kConforms},
    {"lower_side_doubtful", {.value = -0.0025, .u = 0.0005}, kTolerance, kBoth, kUndecided},
    {"lower_side_fails", {.value = -0.0041, .u = 0.0005}, kTolerance, kBoth, kFails},
    {"too_coarse_to_pass_a_tolerance", {.value = 0, .u = 0.002}, kTolerance, kBoth, kUndecided},
    {"exactly_the_band_away_is_undecided", {.value = 8, .u = 1}, kAtMost, kBoth, kUndecided},
    {"exactly_the_band_beyond_is_undecided", {.value = 12, .u = 1}, kAtMost, kBoth, kUndecided},

    {"simple_inside", {.value = 9.99, .u = 5}, kAtMost, kSimple, kConforms},
    {"simple_outside", {.value = 10.01, .u = 5}, kAtMost, kSimple, kFails},
    {"guarded_acceptance_inside", {.value = 7, .u = 1}, kAtMost, kAccept, kConforms},
    {"guarded_acceptance_doubtful_fails", {.value = 9, .u = 1}, kAtMost, kAccept, kFails},
    {"guarded_rejection_doubtful_conforms", {.value = 11, .u = 1}, kAtMost, kReject, kConforms},
    {"guarded_rejection_beyond_fails", {.value = 13, .u = 1}, kAtMost, kReject, kFails},

    {"exact_on_an_allowed_end", {.value = 10}, kAtMost, kBoth, kConforms},
    {"exact_on_a_forbidden_end", {.value = 10}, kBelow, kBoth, kFails},
    {"exact_on_an_allowed_lower_end", {.value = 10}, kAtLeast, kBoth, kConforms},
    {"exact_on_a_forbidden_lower_end", {.value = 10}, kAbove, kBoth, kFails},
    {"exact_inside", {.value = 9}, kBelow, kBoth, kConforms},
    {"exact_outside", {.value = 11}, kAtMost, kAccept, kFails},
    {"uncertain_on_the_limit", {.value = 10, .u = 1e-9}, kAtMost, kBoth, kUndecided},
    {"no_limit_at_all", {.value = 1e9, .u = 1}, Limit{}, kBoth, kConforms},
};

class Decide : public testing::TestWithParam<Row> {};

TEST_P(Decide, FollowsTheRule) {
    const Row& row = GetParam();
    EXPECT_EQ(name_of(decide(row.measured, row.limit, row.rule)), name_of(row.want));
}

INSTANTIATE_TEST_SUITE_P(Rows, Decide, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

// A guard band of 0 is simple acceptance (ILAC-G8), whichever the rule.
TEST(GuardFactor, ZeroIsSimpleAcceptance) {
    for (const DecisionRule rule : {kSimple, kAccept, kReject, kBoth}) {
        for (const double value : {9.0, 10.0, 11.0}) {
            const Measured measured = {.value = value, .u = 1};
            EXPECT_EQ(decide(measured, kAtMost, rule, 0), decide(measured, kAtMost, kSimple)) << value;
        }
    }
}

TEST(GuardFactor, IsOfTheExpandedUncertainty) {
    EXPECT_DOUBLE_EQ(guard_band({.value = 1, .u = 0.5}), 1);
    EXPECT_DOUBLE_EQ(guard_band({.value = 1, .u = 0.5}, 0.83), 0.83);
    EXPECT_EQ(decide({.value = 8.2, .u = 1}, kAtMost, kBoth, 0.83), kConforms);  // 1.8 > 0.83 * 2
    EXPECT_EQ(decide({.value = 8.4, .u = 1}, kAtMost, kBoth, 0.83), kUndecided);
}

TEST(ConformityProbability, OfAnExactValueIsSure) {
    EXPECT_EQ(conformity_probability({.value = 10}, kAtMost), 1);
    EXPECT_EQ(conformity_probability({.value = 10}, kBelow), 0);
    EXPECT_EQ(failure_probability({.value = 10}, kBelow), 1);
    EXPECT_EQ(failure_probability({.value = 10}, kAtLeast), 0);
}

// Both probabilities make up 1, and neither loses its digits in the far tail (normal tail beyond 6: 9.8659e-10).
TEST(ConformityProbability, KeepsSmallProbabilities) {
    EXPECT_NEAR(failure_probability({.value = 4, .u = 1}, kAtMost) / 9.865876450e-10, 1, 1e-9);
    EXPECT_NEAR(conformity_probability({.value = 16, .u = 1}, kAtMost) / 9.865876450e-10, 1, 1e-9);
    const Limit narrow_far_off = {.lower = 16.0, .upper = 17.0};
    EXPECT_NEAR(conformity_probability({.value = 10, .u = 1}, narrow_far_off) / (9.865876450e-10 - 1.279812544e-12), 1,
                1e-9);
    for (const double value : {-3.0, 9.0, 10.0, 12.5, 30.0}) {
        for (const double dof : {2.0, 7.5, std::numeric_limits<double>::infinity()}) {
            const Measured measured = {.value = value, .u = 1.5, .dof = dof};
            for (const Limit& limit : {kAtMost, kAtLeast, narrow_far_off, Limit{}}) {
                EXPECT_NEAR(conformity_probability(measured, limit) + failure_probability(measured, limit), 1, 1e-12);
            }
        }
    }
}

// With two degrees of freedom P(t < 1) = 1/2 + 1 / (2 sqrt 3), in closed form.
TEST(ConformityProbability, UsesStudentTForFewReadings) {
    EXPECT_NEAR(conformity_probability({.value = 9, .u = 1, .dof = 2}, kAtMost), 0.5 + 0.5 / std::sqrt(3.0), 1e-12);
}

TEST(AcceptanceInterval, LeavesTheGuardBandInside) {
    const auto acceptance = acceptance_interval(kTolerance, 0.001);
    ASSERT_TRUE(acceptance);
    EXPECT_DOUBLE_EQ(*acceptance->lower, -0.002);
    EXPECT_DOUBLE_EQ(*acceptance->upper, 0.002);
    EXPECT_DOUBLE_EQ(*acceptance_interval(kAtMost, -1)->upper, 11);
    EXPECT_FALSE(acceptance_interval(kTolerance, 0.004));
}

TEST(ConformityNames, AreAllDifferent) {
    EXPECT_EQ(name_of(kSimple), "simple-acceptance");
    EXPECT_EQ(name_of(kAccept), "guarded-acceptance");
    EXPECT_EQ(name_of(kReject), "guarded-rejection");
    EXPECT_EQ(name_of(kBoth), "both-guarded");
    EXPECT_EQ(name_of(kConforms), "conforms");
    EXPECT_EQ(name_of(kFails), "fails");
    EXPECT_EQ(name_of(kUndecided), "undecided");
}

}  // namespace
}  // namespace grainside::measure
