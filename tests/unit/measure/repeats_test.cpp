// JCGM 100:2008, 4.2.3 (mean of repeats) and F.2.2.1 (resolution); the rest is solved by hand from
// |value - limit| > 2 sqrt(repeatable^2 / n + systematic^2).
#include "measure/repeats.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <string>
#include <string_view>
#include <vector>

namespace grainside::measure {
namespace {

// 21 to 23: mean 22, s = 1.
TEST(MeanOf, HasTheStandardDeviationOfAMean) {
    const Measured mean = mean_of(std::array{21.0, 22.0, 23.0}, 0.1);
    EXPECT_DOUBLE_EQ(mean.value, 22);
    EXPECT_DOUBLE_EQ(mean.u, 1 / std::sqrt(3.0));
    EXPECT_EQ(mean.dof, 2);
}

// JCGM 100:2008, table 1 of 4.4.3: twenty temperatures, mean 100.145, s 1.489, s of the mean 0.333 (from memory).
TEST(MeanOf, IsTheGuidesTable) {
    const std::array readings = {96.90,  98.18,  98.25,  98.61,  99.03,  99.49,  99.56,  99.74,  99.89,  100.07,
                                 100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72};
    const Measured mean = mean_of(readings, 0.01);
    EXPECT_NEAR(mean.value, 100.145, 0.0005);
    EXPECT_NEAR(mean.u, 0.333, 0.0005);
    EXPECT_EQ(mean.dof, 19);
}

TEST(MeanOf, NeverBeatsTheResolution) {
    const Measured mean = mean_of(std::array{5.0, 5.0, 5.0, 5.0}, 0.1);
    EXPECT_EQ(mean.value, 5);
    EXPECT_DOUBLE_EQ(mean.u, 0.1 / std::sqrt(12.0));
    EXPECT_TRUE(std::isinf(mean.dof));
    EXPECT_EQ(mean_of(std::array{5.0, 5.0, 5.0}, 0).u, 0);
}

// Large readings that differ little keep their spread.
TEST(MeanOf, KeepsItsDigits) {
    const Measured mean = mean_of(std::array{1e9 + 1, 1e9 + 2, 1e9 + 3}, 0);
    EXPECT_DOUBLE_EQ(mean.value, 1e9 + 2);
    EXPECT_NEAR(mean.u, 1 / std::sqrt(3.0), 1e-9);
}

struct Row {
    std::string_view name;
    ReadingParts parts;
    Limit limit;
    double guard_factor;
    int want;  // 0: no number would do
};

constexpr Limit kAtMost = {.lower = {}, .upper = 0.15};
constexpr Limit kTolerance = {.lower = 9.0, .upper = 10.0};

const Row kRows[] = {
    // 0.25 > 2 * 0.25 / sqrt n: n > 4.
    {"above_four", {.value = 0.75, .repeatable = 0.25}, {.lower = {}, .upper = 1.0}, 1, 5},
    // 0.02 > 2 * 0.019 / sqrt n: n > 3.61.
    {"four", {.value = 0.13, .repeatable = 0.019}, kAtMost, 1, 4},
    // The same beyond the limit.
    {"four_beyond", {.value = 0.17, .repeatable = 0.019}, kAtMost, 1, 4},
    // n > 4 * 0.02^2 / (0.02^2 - 4 * 0.008^2) = 11.1.
    {"with_a_systematic_part", {.value = 0.13, .repeatable = 0.02, .systematic = 0.008}, kAtMost, 1, 12},
    {"systematic_part_too_large", {.value = 0.13, .repeatable = 0.02, .systematic = 0.0101}, kAtMost, 1, 0},
    {"on_the_limit", {.value = 0.15, .repeatable = 0.02}, kAtMost, 1, 0},
    {"one_is_enough", {.value = 0.05, .repeatable = 0.02}, kAtMost, 1, 1},
    {"nothing_repeatable", {.value = 0.05, .repeatable = 0, .systematic = 0.02}, kAtMost, 1, 1},
    {"exact", {.value = 0.15}, kAtMost, 1, 1},
    {"nearer_end_counts", {.value = 9.2, .repeatable = 0.29}, kTolerance, 1, 9},  // n > 8.41
    {"guard_factor", {.value = 0.13, .repeatable = 0.019}, kAtMost, 0.5, 1},      // 0.02 > 0.019
    // 1e-4 > 2 * 0.004899 / sqrt n: n > 9600.08, while 0.0051 would want 10,404.
    {"below_the_cap", {.value = 0.1499, .repeatable = 0.004899}, kAtMost, 1, 9601},
    {"beyond_the_cap", {.value = 0.1499, .repeatable = 0.0051}, kAtMost, 1, 0},
};

class RepeatsToSettle : public testing::TestWithParam<Row> {};

TEST_P(RepeatsToSettle, IsTheSmallestNumber) {
    const Row& row = GetParam();
    EXPECT_EQ(repeats_to_settle(row.parts, row.limit, row.guard_factor).value_or(0), row.want);
}

INSTANTIATE_TEST_SUITE_P(Rows, RepeatsToSettle, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace grainside::measure
