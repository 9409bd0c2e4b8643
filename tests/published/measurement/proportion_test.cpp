// Limits of proportions and of their differences against published figures. Beside each table: the source, and whether
// its figures were seen or are from memory. The tolerance is half of the last digit that the source gives; of figures
// with all digits of a double, a few units of its last place.
#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <string_view>
#include <utility>

#include "measure/proportion.h"

namespace grainside::measure {
namespace {

constexpr double kAllDigits = 5e-15;

struct ProportionRow {
    std::string_view name;
    Counted counted;
    double low;
    double high;
    double tolerance;
};

void PrintTo(const ProportionRow& row, std::ostream* out) {
    *out << row.name;
}

const ProportionRow kProportions[] = {
    // Reference output of the R package binom (binom.confint, "wilson", 95 %) as the tests of statsmodels quote it,
    // seen.
    {"r_18_of_20", {18, 20}, 0.6989663547715128, 0.972133518786232, kAllDigits},
    {"r_4_of_20", {4, 20}, 0.0806576625797981, 0.4160174322518935, kAllDigits},
    {"r_4_of_200", {4, 200}, 0.00780442641634947, 0.05028708690582643, kAllDigits},
    {"r_190_of_200", {190, 200}, 0.910421851861224, 0.972617354399236, kAllDigits},
    {"r_1_of_30", {1, 30}, 0.00590859, 0.16670391, 5e-9},
    {"r_29_of_30", {29, 30}, 0.8332961, 0.9940914, 5e-8},
    {"r_0_of_30", {0, 30}, 0.0, 0.11351339, 5e-9},
    {"r_30_of_30", {30, 30}, 0.8864866, 1.0, 5e-8},
    // A regression test of statsmodels (test_confint_proportion_wilson_clip), seen. Its normal quantile has more digits
    // than its limits.
    {"statsmodels_19_of_38", {19, 38}, 0.348499283643951, 0.651500716356049, kAllDigits},
    // Newcombe, Statistics in Medicine 17 (1998) 857-872, table I, method 3; from memory, recomputed.
    {"newcombe_81_of_263", {81, 263}, 0.2553, 0.3662, 5e-5},
    {"newcombe_15_of_148", {15, 148}, 0.0624, 0.1605, 5e-5},
    {"newcombe_0_of_20", {0, 20}, 0.0, 0.1611, 5e-5},
    {"newcombe_1_of_29", {1, 29}, 0.0061, 0.1718, 5e-5},
    // Own calculation from the formula (Wilson 1927) by another program, for small audits.
    {"small_0_of_5", {0, 5}, 0.0, 0.434482, 5e-7},
    {"small_0_of_10", {0, 10}, 0.0, 0.277533, 5e-7},
    {"small_1_of_10", {1, 10}, 0.017876, 0.40415, 5e-7},
    {"small_3_of_10", {3, 10}, 0.107791, 0.603222, 5e-7},
    {"small_2_of_12", {2, 12}, 0.046965, 0.448031, 5e-7},
};

class PublishedProportion : public testing::TestWithParam<ProportionRow> {};

TEST_P(PublishedProportion, HasWilsonsLimits) {
    const ProportionRow& row = GetParam();
    const ShareLimits limits = wilson_limits(row.counted, 0.95);
    EXPECT_NEAR(limits.low, row.low, row.tolerance);
    EXPECT_NEAR(limits.high, row.high, row.tolerance);
    // What was not counted has the limits turned round.
    const ShareLimits rest = wilson_limits({row.counted.of - row.counted.count, row.counted.of}, 0.95);
    EXPECT_NEAR(rest.low, 1 - limits.high, kAllDigits);
    EXPECT_NEAR(rest.high, 1 - limits.low, kAllDigits);
}

INSTANTIATE_TEST_SUITE_P(Rows, PublishedProportion, testing::ValuesIn(kProportions),
                         [](const auto& each) { return std::string(each.param.name); });

// statsmodels asks it of 38 of 38 and 0 of 77, where rounding once led out of the scale, seen.
TEST(PublishedProportions, StayWithinTheScale) {
    for (const std::uint64_t of : {1U, 2U, 38U, 77U, 1'000U, 1'000'000'007U}) {
        for (const double confidence : {0.9, 0.95, 0.99}) {
            EXPECT_EQ(wilson_limits({0, of}, confidence).low, 0) << of;
            EXPECT_LT(wilson_limits({0, of}, confidence).high, 1) << of;
            EXPECT_EQ(wilson_limits({of, of}, confidence).high, 1) << of;
            EXPECT_GT(wilson_limits({of, of}, confidence).low, 0) << of;
        }
    }
    EXPECT_EQ(wilson_limits({0, 0}, 0.95).low, 0);
    EXPECT_EQ(wilson_limits({0, 0}, 0.95).high, 1);
}

struct DifferenceRow {
    std::string_view name;
    Counted one;
    Counted other;
    double low;
    double high;
};

void PrintTo(const DifferenceRow& row, std::ostream* out) {
    *out << row.name;
}

// Newcombe, Statistics in Medicine 17 (1998) 873-890, table II, method 10, 95 %; from memory, recomputed.
const DifferenceRow kDifferences[] = {
    {"a", {56, 70}, {48, 80}, 0.0524, 0.3339}, {"b", {9, 10}, {3, 10}, 0.1705, 0.8090},
    {"c", {6, 7}, {2, 7}, 0.0582, 0.8062},     {"d", {5, 56}, {0, 29}, -0.0381, 0.1926},
    {"e", {0, 10}, {0, 20}, -0.1611, 0.2775},  {"f", {0, 10}, {0, 10}, -0.2775, 0.2775},
    {"g", {10, 10}, {0, 20}, 0.6791, 1.0000},  {"h", {10, 10}, {0, 10}, 0.6075, 1.0000},
};

class PublishedDifference : public testing::TestWithParam<DifferenceRow> {};

TEST_P(PublishedDifference, HasNewcombesLimits) {
    const DifferenceRow& row = GetParam();
    const ShareLimits limits = difference_limits(row.one, row.other, 0.95);
    EXPECT_NEAR(limits.low, row.low, 5e-5);
    EXPECT_NEAR(limits.high, row.high, 5e-5);
}

INSTANTIATE_TEST_SUITE_P(Rows, PublishedDifference, testing::ValuesIn(kDifferences),
                         [](const auto& each) { return std::string(each.param.name); });

// A difference of shares lies between -1 and 1, and of nothing nothing more is known.
TEST(PublishedDifferences, OfNothingIsAnything) {
    for (const auto& [one, other] : {std::pair{Counted{0, 0}, Counted{3, 10}}, {Counted{3, 10}, Counted{0, 0}}}) {
        const ShareLimits limits = difference_limits(one, other, 0.95);
        EXPECT_EQ(limits.low, -1);
        EXPECT_EQ(limits.high, 1);
    }
}

// Where half is counted, Wilson's half width is z / (2 sqrt(n + z^2)), so n = z^2 / (4 w^2) - z^2: the 384.15 and 96.04
// of the normal approximation (Cochran, Sampling Techniques, 4.4; from memory) less 3.84.
TEST(PublishedProportions, SayHowManyAreNeeded) {
    EXPECT_EQ(number_for_half_width(0.5, 0.05, 0.95), 381U);
    EXPECT_EQ(number_for_half_width(0.5, 0.1, 0.95), 93U);
    // 19 of 38 above has the half width 0.151500716356049.
    EXPECT_EQ(number_for_half_width(0.5, 0.15150072, 0.95), 38U);
    EXPECT_EQ(number_for_half_width(0.5, 0.15150071, 0.95), 39U);
    // 4 of 200 above has the half width 0.02124133024473847, 0 of 30 the half width 0.056756695.
    EXPECT_EQ(number_for_half_width(0.02, 0.0212413303, 0.95), 200U);
    EXPECT_EQ(number_for_half_width(0, 0.0567567, 0.95), 30U);
    EXPECT_EQ(number_for_half_width(1, 0.0567567, 0.95), 30U);
    EXPECT_EQ(number_for_half_width(0.5, 0.6, 0.95), 1U);
}

}  // namespace
}  // namespace grainside::measure
