// Weighted means by hand: weights 1/u^2; the widening of R. T. Birge (Physical Review 40, 1932; from memory), which the
// particle physicists' tables call scale factor.
#include "measure/pooled.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <limits>
#include <random>
#include <utility>
#include <vector>

namespace grainside::measure {
namespace {

TEST(Pooled, OfOneReadingIsTheReading) {
    const Measured one = pooled(std::array{Measured{.value = 3, .u = 0.2, .dof = 4}});
    EXPECT_EQ(one.value, 3);
    EXPECT_EQ(one.u, 0.2);
    EXPECT_EQ(one.dof, 4);
}

// 10 +- 1 and 10.5 +- 1: mean 10.25, chi-square 0.125, so no widening: 1/sqrt(2).
TEST(Pooled, OfReadingsThatAgreeIsSurer) {
    const Measured mean = pooled(std::array{Measured{.value = 10, .u = 1}, Measured{.value = 10.5, .u = 1}});
    EXPECT_DOUBLE_EQ(mean.value, 10.25);
    EXPECT_DOUBLE_EQ(mean.u, 1 / std::sqrt(2.0));
    EXPECT_TRUE(std::isinf(mean.dof));
}

// Four alike halve the uncertainty; they never widen below it.
TEST(Pooled, OfEqualReadingsGoesWithTheRoot) {
    const std::vector<Measured> four(4, {.value = 0.16, .u = 0.01});
    EXPECT_DOUBLE_EQ(pooled(four).value, 0.16);
    EXPECT_DOUBLE_EQ(pooled(four).u, 0.005);
}

// Weights 1 and 1/4: (10 + 11/4) / (5/4) = 10.2; u = 1/sqrt(1.25); chi-square 0.04 + 0.16.
TEST(Pooled, WeighsByTheSquareOfTheUncertainty) {
    const Measured mean = pooled(std::array{Measured{.value = 10, .u = 1}, Measured{.value = 11, .u = 2}});
    EXPECT_DOUBLE_EQ(mean.value, 10.2);
    EXPECT_DOUBLE_EQ(mean.u, 1 / std::sqrt(1.25));
}

// 10 +- 1 and 13 +- 2: mean 10.6, chi-square 0.36 + 1.44 = 1.8 on one degree: u = sqrt(1.8 / 1.25) = 1.2.
TEST(Pooled, OfReadingsThatDisagreeIsWidened) {
    const Measured mean = pooled(std::array{Measured{.value = 10, .u = 1}, Measured{.value = 13, .u = 2}});
    EXPECT_DOUBLE_EQ(mean.value, 10.6);
    EXPECT_DOUBLE_EQ(mean.u, 1.2);
}

// Equal uncertainties that are far too small: what is left is the standard deviation of the mean, here that of 21, 22,
// 23 (JCGM 100:2008, 4.2.3): 1/sqrt(3).
TEST(Pooled, OfWildReadingsIsTheirScatter) {
    const Measured mean = pooled(std::array{Measured{.value = 21, .u = 0.001}, Measured{.value = 23, .u = 0.001},
                                            Measured{.value = 22, .u = 0.001}});
    EXPECT_DOUBLE_EQ(mean.value, 22);
    EXPECT_NEAR(mean.u, 1 / std::sqrt(3.0), 1e-12);
}

TEST(Pooled, KeepsTheLeastDegreesOfFreedom) {
    const Measured mean =
        pooled(std::array{Measured{.value = 10, .u = 1, .dof = 9}, Measured{.value = 10, .u = 1, .dof = 4}});
    EXPECT_EQ(mean.dof, 4);
}

// ---- exact readings ----------------------------------------------------------------------------------------------

TEST(Pooled, CountsExactReadingsOnly) {
    const Measured mean = pooled(std::array{Measured{.value = 12, .u = 1}, Measured{.value = 10}});
    EXPECT_EQ(mean.value, 10);
    EXPECT_EQ(mean.u, 0);
}

TEST(Pooled, OfExactReadingsThatAgreeIsExact) {
    const Measured mean = pooled(std::array{Measured{.value = 10}, Measured{.value = 10}, Measured{.value = 10}});
    EXPECT_EQ(mean.value, 10);
    EXPECT_EQ(mean.u, 0);
}

// JCGM 100:2008, 4.2.3: s of the mean of 21, 22, 23 is 1/sqrt(3), with two degrees of freedom.
TEST(Pooled, OfExactReadingsThatDifferIsTheirMean) {
    const Measured mean = pooled(std::array{Measured{.value = 21}, Measured{.value = 22}, Measured{.value = 23}});
    EXPECT_DOUBLE_EQ(mean.value, 22);
    EXPECT_DOUBLE_EQ(mean.u, 1 / std::sqrt(3.0));
    EXPECT_EQ(mean.dof, 2);
}

// ---- order -------------------------------------------------------------------------------------------------------

TEST(Pooled, DoesNotShowTheOrderInTheLastDigit) {
    std::mt19937_64 random(7);
    const auto uniform = [&] { return static_cast<double>(random() >> 11U) * 0x1.0p-53; };
    for (int n = 0; n < 300; ++n) {
        std::vector<Measured> readings(2 + random() % 7);
        for (Measured& one : readings) one = {.value = uniform() * 10, .u = 0.01 + uniform(), .dof = 3 + uniform()};
        // Equal values with different uncertainties, and now and then an exact one.
        readings[1].value = readings[0].value;
        if (n % 5 == 0) readings[0].u = 0;
        if (n % 10 == 0) readings[1].u = 0;
        const Measured before = pooled(readings);
        for (std::size_t i = readings.size(); i > 1; --i) {
            std::swap(readings[i - 1], readings[static_cast<std::size_t>(random() % i)]);
        }
        const Measured after = pooled(readings);
        ASSERT_EQ(before.value, after.value) << n;
        ASSERT_EQ(before.u, after.u) << n;
        ASSERT_EQ(before.dof, after.dof) << n;
    }
}

// The mean lies among the readings, and is never surer than 1/sqrt(sum of 1/u^2).
TEST(Pooled, StaysWithinReason) {
    std::mt19937_64 random(8);
    const auto uniform = [&] { return static_cast<double>(random() >> 11U) * 0x1.0p-53; };
    for (int n = 0; n < 300; ++n) {
        std::vector<Measured> readings(1 + random() % 7);
        double low = std::numeric_limits<double>::infinity();
        double high = -low;
        double weights = 0;
        for (Measured& one : readings) {
            one = {.value = uniform(), .u = 0.01 + uniform()};
            low = std::min(low, one.value);
            high = std::max(high, one.value);
            weights += 1 / (one.u * one.u);
        }
        const Measured mean = pooled(readings);
        ASSERT_GE(mean.value, low - 1e-12);
        ASSERT_LE(mean.value, high + 1e-12);
        ASSERT_GE(mean.u, 1 / std::sqrt(weights) - 1e-12);
    }
}

}  // namespace
}  // namespace grainside::measure
