// Thickness of leather and its coat: trade units and coat shares.
//
// Ids are those of the fact base; 'seen' where a page with the figures was read, 'from memory' where not, 'recomputed'
// where a figure follows from seen ones.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <string_view>

#include "measure/coat_share.h"
#include "measure/unit.h"

namespace grainside::measure {
namespace {

template <typename Row>
std::string name_of(const testing::TestParamInfo<Row>& info) {
    return std::string(info.param.name);
}

struct ThicknessRow {
    std::string_view name;
    double value;
    std::string_view unit;
    double millimetres;
    double tolerance;  // half a unit of the last digit that the source prints; 0 stands for the rounding of a double
    std::string_view source;
};

constexpr ThicknessRow kThicknesses[] = {
    {"one_ounce", 1, "oz", 0.396875, 0, "lt-dim-01: 1/64 inch (rule seen, decimal recomputed)"},
    {"three_ounces", 3, "oz", 1.190625, 0, "lt-cv-07, recomputed"},
    {"eight_ounces", 8, "oz", 3.175, 0, "lt-cv-07, recomputed"},
    {"ten_ounces", 10, "oz", 3.96875, 0, "lt-cv-07, recomputed"},
    {"chart_two_ounces", 2, "oz", 0.8, 0.05, "lt-dim-02, chart seen"},
    {"chart_three_ounces", 3, "oz", 1.2, 0.05, "lt-dim-02, chart seen"},
    {"chart_four_ounces", 4, "oz", 1.6, 0.05, "lt-dim-02, chart seen"},
    {"chart_five_ounces", 5, "oz", 2.0, 0.05, "lt-dim-02, chart seen"},
    {"chart_eight_ounces", 8, "oz", 3.2, 0.05, "lt-dim-02, chart seen"},
    {"one_iron", 1, "iron", 0.529167, 5e-7, "lt-cv-07, recomputed"},
    {"twelve_irons_are_a_quarter_inch", 12, "iron", 6.35, 0, "lt-dim-04, seen"},
    {"sixteen_ounces_are_a_quarter_inch", 16, "oz", 6.35, 0, "lt-dim-04, seen"},
};

class Thickness : public testing::TestWithParam<ThicknessRow> {};

TEST_P(Thickness, IsReadInTradeUnits) {
    const ThicknessRow& row = GetParam();
    SCOPED_TRACE(row.source);
    const UnitInfo* unit = find_unit(row.unit);
    ASSERT_NE(unit, nullptr);
    EXPECT_EQ(unit->dimension, Dimension::length);
    EXPECT_NEAR(to_working(row.value, *unit), row.millimetres, row.tolerance + 1e-14);
}

INSTANTIATE_TEST_SUITE_P(Rows, Thickness, testing::ValuesIn(kThicknesses), name_of<ThicknessRow>);

struct ShareRow {
    std::string_view name;
    double total;
    double coat;
    double percent;
};

// lt-cv-01, recomputed there from seen limits; printed to two decimals.
constexpr ShareRow kShares[] = {
    {"none", 1.2, 0.0, 0.0},
    {"aniline", 1.2, 0.01, 0.83},
    {"below_the_eu_limit", 1.2, 0.14, 11.67},
    {"at_the_eu_limit", 1.2, 0.15, 12.5},
    {"above_the_eu_limit", 1.2, 0.16, 13.33},
    {"below_the_spanish_limit", 1.2, 0.29, 24.17},
    {"at_the_spanish_limit", 1.2, 0.3, 25.0},
    {"third_of_1_2", 1.2, 0.4, 33.33},
    {"over_a_third_of_1_2", 1.2, 0.41, 34.17},
    {"third_of_0_9", 0.9, 0.3, 33.33},
    {"over_a_third_of_0_9", 0.9, 0.31, 34.44},
    {"third_of_0_6", 0.6, 0.2, 33.33},
    {"over_a_third_of_0_6", 0.6, 0.21, 35.0},
    {"thin_and_over_a_third", 0.42, 0.15, 35.71},
    {"below_china_base", 0.8, 0.35, 43.75},
    {"at_china_base", 1.0, 0.4, 40.0},
    {"over_china_base", 1.0, 0.45, 45.0},
    {"half", 1.0, 0.5, 50.0},
};

class CoatShare : public testing::TestWithParam<ShareRow> {};

TEST_P(CoatShare, IsThatOfTheTable) {
    const ShareRow& row = GetParam();
    const std::optional<Measured> share = coat_share({.value = row.coat}, {.value = row.total});
    const std::optional<Measured> base = base_share({.value = row.coat}, {.value = row.total});
    ASSERT_TRUE(share && base);
    EXPECT_NEAR(share->value, row.percent, 0.005 + 1e-9);
    EXPECT_DOUBLE_EQ(share->value + base->value, 100);
    EXPECT_EQ(share->u, 0);
}

INSTANTIATE_TEST_SUITE_P(Rows, CoatShare, testing::ValuesIn(kShares), name_of<ShareRow>);

// Directive 94/11/EC, Annex I(2)(a)(ii) (seen): one third is within the limit, so it must not come out above by more
// than the last digits of a double.
TEST(CoatShareOfAThird, IsAThird) {
    EXPECT_NEAR(coat_share({.value = 0.40}, {.value = 1.20})->value, 100.0 / 3, 1e-13);
    EXPECT_NEAR(coat_share({.value = 0.30}, {.value = 0.90})->value, 100.0 / 3, 1e-13);
    EXPECT_NEAR(coat_share({.value = 0.20}, {.value = 0.60})->value, 100.0 / 3, 1e-13);
}

// GUM 5.1.2 and 5.2.2 by hand: the parts are 100/1.2 * 0.01 = 0.8333 and 13.333/1.2 * 0.02 = 0.2222 per cent.
TEST(CoatShareUncertainty, ComesFromBothThicknesses) {
    const Measured coat{.value = 0.16, .u = 0.01, .dof = 4};
    const Measured total{.value = 1.20, .u = 0.02, .dof = 9};
    const std::optional<Measured> apart = coat_share(coat, total);
    ASSERT_TRUE(apart);
    EXPECT_NEAR(apart->u, std::sqrt(0.833333 * 0.833333 + 0.222222 * 0.222222), 1e-6);
    // Welch and Satterthwaite, GUM G.2b: the fourth powers of the parts over their degrees of freedom.
    EXPECT_NEAR(apart->dof, std::pow(0.862454, 4) / (std::pow(0.833333, 4) / 4 + std::pow(0.222222, 4) / 9), 1e-4);
    const std::optional<Measured> together = coat_share(coat, total, 1);
    const std::optional<Measured> against = coat_share(coat, total, -1);
    ASSERT_TRUE(together && against);
    EXPECT_NEAR(together->u, 0.833333 - 0.222222, 1e-6);
    EXPECT_NEAR(against->u, 0.833333 + 0.222222, 1e-6);
    EXPECT_EQ(together->dof, 4);
    EXPECT_DOUBLE_EQ(base_share(coat, total)->u, apart->u);
}

TEST(CoatShareUncertainty, VanishesWhereBothErrAlike) {
    const std::optional<Measured> share = coat_share({.value = 0.3, .u = 0.03}, {.value = 0.9, .u = 0.09}, 1);
    ASSERT_TRUE(share);
    EXPECT_NEAR(share->u, 0, 1e-6);
}

TEST(CoatShareNonsense, IsRefused) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_FALSE(coat_share({.value = -0.1}, {.value = 1}));
    EXPECT_FALSE(coat_share({.value = 1.1}, {.value = 1}));
    EXPECT_FALSE(coat_share({.value = 0}, {.value = 0}));
    EXPECT_FALSE(coat_share({.value = nan}, {.value = 1}));
    EXPECT_FALSE(coat_share({.value = 0.1, .u = -0.01}, {.value = 1}));
    EXPECT_FALSE(coat_share({.value = 0.1}, {.value = 1}, 1.01));
    EXPECT_FALSE(base_share({.value = 0.1}, {.value = 1}, nan));
}

}  // namespace
}  // namespace grainside::measure
