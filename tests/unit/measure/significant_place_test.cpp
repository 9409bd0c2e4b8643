// Decimal arithmetic: the place of the last significant digit after rounding, as JCGM 100:2008, 7.2.6 uses it.
#include "measure/significant_place.h"

#include <gtest/gtest.h>

namespace grainside::measure {
namespace {

TEST(SignificantPlace, IsThatOfTheRoundedNumber) {
    EXPECT_EQ(significant_place(0.0123, 2), -3);
    EXPECT_EQ(significant_place(-0.0123, 2), -3);
    EXPECT_EQ(significant_place(0.0994, 2), -3);
    EXPECT_EQ(significant_place(0.0996, 2), -2);  // 0.10
    EXPECT_EQ(significant_place(9.96, 2), 0);     // 10
    EXPECT_EQ(significant_place(1234, 2), 2);
    EXPECT_EQ(significant_place(1234, 1), 3);
    EXPECT_EQ(significant_place(1000, 1), 3);
    EXPECT_EQ(significant_place(2, 2), -1);
    EXPECT_EQ(significant_place(1e-300, 2), -301);
    EXPECT_EQ(significant_place(1e300, 2), 299);
}

}  // namespace
}  // namespace grainside::measure
