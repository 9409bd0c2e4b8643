// Limits: what an entry holds, and each fault of limits/*.yaml with its exact place.
#include <gtest/gtest.h>

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "small_evidence.h"

namespace grainside::evidence {
namespace {

std::string limit_with(std::string_view rest) {
    return "- {limit: l, title: T, because: B., claims: leather, sources: law,\n" + std::string(rest) + "}\n";
}

Limit last_of(std::string_view rest) {
    return support::loaded_with("limits/b.yaml", limit_with(rest)).limits.back();
}

TEST(Limits, HoldBoundsInWorkingUnits) {
    // 1 mm is 1000 micrometres.
    const Limit limit = last_of(
        "quantity: coat, supports: {at_most: 150 um}, contradicts: {above: 150 um, below: 0.5 mm}, factor: 1.1");
    ASSERT_TRUE(limit.supports && limit.contradicts);
    EXPECT_FALSE(limit.supports->lower);
    EXPECT_NEAR(limit.supports->upper.value_or(0), 0.15, 1e-12);
    EXPECT_TRUE(limit.supports->upper_inclusive);
    EXPECT_NEAR(limit.contradicts->lower.value_or(0), 0.15, 1e-12);
    EXPECT_FALSE(limit.contradicts->lower_inclusive);
    EXPECT_NEAR(limit.contradicts->upper.value_or(0), 0.5, 1e-12);
    EXPECT_FALSE(limit.contradicts->upper_inclusive);
    EXPECT_EQ(limit.unit, "mm");
    EXPECT_DOUBLE_EQ(limit.factor, 1.1);
    EXPECT_EQ(limit.quantity, "coat");
    EXPECT_EQ(limit.within_parts, kAllParts);
    EXPECT_FALSE(limit.stated_tolerance);
}

TEST(Limits, HoldTheirScope) {
    const Limit limit = last_of(
        "markets: [eu, us], in_force: {from: 1996-03-23}, categories: [bag, belt], not_claims: suede, kinds: "
        "[material, "
        "species], needs: leather, say_instead: coated leather, quantity: coat, contradicts: {above: 0.15 mm}");
    EXPECT_EQ(limit.markets, (std::vector<std::string>{"eu", "us"}));
    EXPECT_EQ(limit.in_force.from, "1996-03-23");
    EXPECT_EQ(limit.not_claims.size(), 1U);
    // parts.yaml: any, bag, small-goods, luggage, belt.
    EXPECT_EQ(limit.categories, (1U << 1U) | (1U << 4U));
    EXPECT_EQ(limit.kinds,
              (1U << static_cast<unsigned>(Kind::material)) | (1U << static_cast<unsigned>(Kind::species)));
    EXPECT_NE(limit.needs, 0);
    EXPECT_EQ(limit.say_instead, "coated leather");
}

// By index: the small book has `coat`, and this file begins with `wide`.
TEST(Limits, MayTakeThePlaceOfOthers) {
    const auto data = support::loaded_with(
        "limits/b.yaml",
        "- {limit: wide, title: T, because: B., claims: leather, sources: law, quantity: coat, contradicts: {above: "
        "0.3 mm}}\n" +
            limit_with("quantity: coat, contradicts: {above: 0.2 mm}, instead_of: [coat, wide]"));
    ASSERT_EQ(data.limits.size(), 3U);
    EXPECT_TRUE(data.limits[0].instead_of.empty());
    EXPECT_EQ(data.limits[2].instead_of, (std::vector<std::size_t>{0, 1}));
}

TEST(Limits, MayHoldAToleranceOrPartsInstead) {
    const Limit stated = last_of("quantity: fibre-share, stated: {tolerance: 3 %, side: below}");
    ASSERT_TRUE(stated.stated_tolerance);
    EXPECT_DOUBLE_EQ(*stated.stated_tolerance, 3);
    EXPECT_TRUE(stated.only_below);
    EXPECT_EQ(stated.unit, "%");
    const Limit vegan = last_of("no_part_is: [leather, silk], within_parts: [body, lining]");
    EXPECT_EQ(vegan.no_part_is.size(), 2U);
    EXPECT_EQ(vegan.within_parts, part_bit(Part::body) | part_bit(Part::lining));
    EXPECT_TRUE(vegan.quantity.empty());
}

struct Row {
    std::string_view name, text, want;
};

constexpr Row kLines[] = {
    {"right", "quantity: coat, contradicts: {above: 0.15 mm}", ""},
    {"meet_at_one_number", "quantity: coat, supports: {at_most: 0.15 mm}, contradicts: {above: 0.15 mm}", ""},
    {"a_gap_between_them", "quantity: coat, supports: {below: 0.1 mm}, contradicts: {above: 0.15 mm}", ""},
    {"one_element", "quantity: content.Cr, contradicts: {above: 0.1 %}", ""},
    {"another_unit_of_the_dimension", "quantity: content.Cr+Al, supports: {at_most: 3 mg/kg}", ""},
    {"a_plain_number", "quantity: rub-grade, supports: {at_least: 4}", ""},
    {"unknown_key", "quantity: coat, contradicts: {above: 0.15 mm}, grade: x", "2:48 unknown-key"},
    {"unknown_market", "markets: mars, quantity: coat, contradicts: {above: 0.15 mm}", "2:10 unknown-market"},
    {"bad_day", "in_force: {from: 2024-02-30}, quantity: coat, contradicts: {above: 0.15 mm}", "2:18 wrong-type"},
    {"unknown_category", "categories: [bags], quantity: coat, contradicts: {above: 0.15 mm}", "2:14 unknown-category"},
    {"unknown_kind", "kinds: materials, quantity: coat, contradicts: {above: 0.15 mm}", "2:8 unknown-kind"},
    {"unknown_concepts", "not_claims: lether, needs: sued, quantity: coat, contradicts: {above: 0.15 mm}",
     "2:13 unknown-concept; 2:28 unknown-concept"},
    {"no_ground", "say_instead: x", "1:3 missing-key"},
    {"quantity_without_bounds", "quantity: coat", "1:3 missing-key"},
    {"empty_bound", "quantity: coat, contradicts: {}", "2:30 missing-key"},
    {"bound_is_a_number", "quantity: coat, contradicts: 0.15 mm", "2:30 wrong-type"},
    {"unknown_bound", "quantity: coat, contradicts: {over: 0.15 mm}", "2:30 missing-key; 2:31 unknown-key"},
    {"unknown_quantity", "quantity: cote, contradicts: {above: 0.15 mm}", "2:11 unknown-quantity"},
    {"quantity_of_no_element", "quantity: content.Xx, contradicts: {above: 1 %}", "2:11 unknown-quantity"},
    {"a_colour_is_no_number", "quantity: before, contradicts: {above: 1}", "2:11 unknown-quantity"},
    {"content_needs_an_element", "quantity: content, contradicts: {above: 1 %}", "2:11 unknown-quantity"},
    {"bound_without_unit", "quantity: coat, contradicts: {above: 0.15}", "2:38 missing-unit"},
    {"bound_of_another_dimension", "quantity: coat, contradicts: {above: 0.15 g}", "2:38 wrong-unit"},
    {"bound_with_uncertainty", "quantity: coat, contradicts: {above: 0.15 +- 0.01 mm}", "2:38 bad-bound"},
    {"bound_is_a_range", "quantity: coat, contradicts: {above: 0.1-0.2 mm}", "2:38 bad-bound"},
    {"two_lower_bounds", "quantity: coat, contradicts: {above: 0.1 mm, at_least: 0.1 mm}", "2:56 bad-bound"},
    {"bounds_upside_down", "quantity: coat, contradicts: {above: 0.2 mm, below: 0.1 mm}", "2:30 bad-bound"},
    {"bounds_with_nothing_between", "quantity: coat, contradicts: {above: 0.1 mm, at_most: 0.1 mm}", "2:30 bad-bound"},
    {"both_hold_at_one_number", "quantity: coat, supports: {at_most: 0.15 mm}, contradicts: {at_least: 0.15 mm}",
     "2:60 both-ways"},
    {"both_hold_in_a_stretch", "quantity: coat, supports: {above: 0.1 mm}, contradicts: {at_most: 0.2 mm}",
     "2:57 both-ways"},
    {"stated_beside_bounds", "quantity: coat, stated: {tolerance: 0.1 mm}, supports: {above: 0.1 mm}", "1:3 both-ways"},
    {"stated_without_tolerance", "quantity: coat, stated: {side: below}", "2:25 missing-key"},
    {"stated_on_a_side_that_is_none", "quantity: coat, stated: {tolerance: 0.1 mm, side: left}", "2:51 unknown-side"},
    {"negative_tolerance", "quantity: coat, stated: {tolerance: -0.1 mm}", "2:37 bad-bound"},
    {"parts_beside_a_quantity", "no_part_is: leather, quantity: coat, contradicts: {above: 0.1 mm}",
     "2:22 both-ways; 2:38 both-ways"},
    {"parts_without_what_they_are", "within_parts: body, quantity: coat, contradicts: {above: 0.1 mm}",
     "2:1 missing-key"},
    {"unknown_part", "no_part_is: leather, within_parts: [pocket]", "2:37 unknown-part"},
    {"factor_of_nothing", "quantity: coat, contradicts: {above: 0.1 mm}, factor: 0", "2:55 out-of-range"},
};
class LimitFaults : public testing::TestWithParam<Row> {};
TEST_P(LimitFaults, AreToldWithTheirPlace) {
    EXPECT_EQ(support::faults_with("limits/b.yaml", limit_with(GetParam().text)), GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, LimitFaults, testing::ValuesIn(kLines),
                         [](const auto& row) { return std::string(row.param.name); });

constexpr Row kFiles[] = {
    {"nothing_but_a_name", "- {limit: l}\n",
     "1:3 missing-key; 1:3 missing-key; 1:3 missing-key; 1:3 missing-key; 1:3 missing-key"},
    {"twice",
     "- {limit: coat, title: T, because: B., claims: leather, sources: law, quantity: coat, supports: {below: 1 mm}}\n",
     "1:11 duplicate-limit"},
    {"unknown_claim_and_source",
     "- {limit: l, title: T, because: B., claims: [leather, lether], sources: lore, quantity: coat, supports: {below: "
     "1 "
     "mm}}\n",
     "1:55 unknown-concept; 1:73 unknown-source"},
};
class LimitFileFaults : public testing::TestWithParam<Row> {};
TEST_P(LimitFileFaults, AreToldWithTheirPlace) {
    EXPECT_EQ(support::faults_with("limits/b.yaml", GetParam().text), GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, LimitFileFaults, testing::ValuesIn(kFiles),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace grainside::evidence
