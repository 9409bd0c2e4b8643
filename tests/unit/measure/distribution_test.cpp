// JCGM 100:2008, table G.2 (eleven of the entries seen in a public test that quotes it, the others recomputed there);
// normal tails: any table of the normal distribution, here to the digits of Abramowitz and Stegun, table 26.1 (from
// memory).
#include "measure/distribution.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace grainside::measure {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

struct Row {
    double dof, p68, p90, p95, p9545, p99, p9973;
};

constexpr Row kTableG2[] = {
    // The guide prints 235.80 for the last of the first row; exact is 235.784.
    {1, 1.84, 6.31, 12.71, 13.97, 63.66, 235.78}, {2, 1.32, 2.92, 4.30, 4.53, 9.92, 19.21},
    {5, 1.11, 2.02, 2.57, 2.65, 4.03, 5.51},      {10, 1.05, 1.81, 2.23, 2.28, 3.17, 3.96},
    {16, 1.03, 1.75, 2.12, 2.17, 2.92, 3.54},     {20, 1.03, 1.72, 2.09, 2.13, 2.85, 3.42},
    {50, 1.01, 1.68, 2.01, 2.05, 2.68, 3.16},     {kInfinity, 1.00, 1.645, 1.960, 2.000, 2.576, 3.000},
};

TEST(TwoSidedQuantile, IsTableG2) {
    for (const Row& row : kTableG2) {
        const double half_digit = 0.005001;
        EXPECT_NEAR(two_sided_quantile(0.6827, row.dof), row.p68, half_digit) << row.dof;
        EXPECT_NEAR(two_sided_quantile(0.90, row.dof), row.p90, half_digit) << row.dof;
        EXPECT_NEAR(two_sided_quantile(0.95, row.dof), row.p95, half_digit) << row.dof;
        EXPECT_NEAR(two_sided_quantile(0.9545, row.dof), row.p9545, half_digit) << row.dof;
        EXPECT_NEAR(two_sided_quantile(0.99, row.dof), row.p99, half_digit) << row.dof;
        EXPECT_NEAR(two_sided_quantile(0.9973, row.dof), row.p9973, half_digit) << row.dof;
    }
}

TEST(Probability, IsThatOfTheTails) {
    EXPECT_NEAR(probability_below(1.96, kInfinity), 0.9750021049, 1e-10);
    EXPECT_NEAR(probability_above(1.96, kInfinity), 0.0249978951, 1e-10);
    EXPECT_NEAR(probability_above(6, kInfinity) / 9.865876450e-10, 1, 1e-9);
    // With one degree of freedom, the Cauchy distribution: 1/2 + atan(z) / pi.
    EXPECT_NEAR(probability_below(1, 1), 0.75, 1e-12);
    EXPECT_NEAR(probability_above(std::sqrt(3.0), 1), 1.0 / 6, 1e-12);
    // With two: 1/2 + z / (2 sqrt(2 + z^2)).
    EXPECT_NEAR(probability_below(-1, 2), 0.5 - 0.5 / std::sqrt(3.0), 1e-12);
    for (const double dof : {1.0, 3.5, kInfinity}) {
        EXPECT_EQ(probability_below(kInfinity, dof), 1);
        EXPECT_EQ(probability_below(-kInfinity, dof), 0);
        EXPECT_EQ(probability_above(kInfinity, dof), 0);
    }
}

TEST(Probability, OfATTendsToTheNormalOne) {
    EXPECT_NEAR(probability_below(1.3, 1e9), probability_below(1.3, kInfinity), 1e-8);
    EXPECT_NEAR(two_sided_quantile(0.95, 1e9), two_sided_quantile(0.95, kInfinity), 1e-7);
}

TEST(Probability, OfNonsenseIsNoNumberAndThrowsNothing) {
    EXPECT_TRUE(std::isnan(probability_below(1, -1)));
    EXPECT_TRUE(std::isnan(probability_below(std::nan(""), 3)));
    EXPECT_TRUE(std::isnan(two_sided_quantile(0.95, 0)));
    EXPECT_TRUE(std::isnan(two_sided_quantile(std::nan(""), kInfinity)));
}

TEST(DistributionNames, AreThreeDifferentOnes) {
    EXPECT_EQ(name_of(Distribution::normal), "normal");
    EXPECT_EQ(name_of(Distribution::rectangular), "rectangular");
    EXPECT_EQ(name_of(Distribution::student_t), "student-t");
}

}  // namespace
}  // namespace grainside::measure
