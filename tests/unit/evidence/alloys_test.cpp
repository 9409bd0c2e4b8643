// Alloys: what an entry holds, and each fault of alloys.yaml with its exact place.
#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "measure/alloy_window.h"
#include "small_evidence.h"

namespace grainside::evidence {
namespace {

TEST(Alloys, HoldWindowDensityAndTolerance) {
    const auto data = support::loaded_with("alloys.yaml", support::small_evidence().at("alloys.yaml"));
    ASSERT_EQ(data.alloys.size(), 2U);
    const Alloy& zinc = data.alloys[0];
    EXPECT_EQ(zinc.id, "zinc");
    ASSERT_TRUE(zinc.density);
    EXPECT_EQ(zinc.density->low, 6.6);
    EXPECT_EQ(zinc.density->high, 6.7);
    ASSERT_TRUE(zinc.window);
    EXPECT_EQ(zinc.window->balance, "Zn");
    ASSERT_EQ(zinc.window->elements.size(), 2U);
    EXPECT_EQ(zinc.window->elements[0].symbol, "Al");
    EXPECT_EQ(zinc.window->elements[0].low, 3.7);
    EXPECT_EQ(zinc.window->elements[0].high, 4.3);
    EXPECT_EQ(zinc.window->elements[0].tolerance, 0.2);
    EXPECT_EQ(zinc.window->elements[1].tolerance, 0);
    EXPECT_EQ(zinc.sources.size(), 1U);
}

TEST(Alloys, ConvertDensities) {
    // 1 g/cm3 is 1000 kg/m3 by the definition of the units.
    const auto data =
        support::loaded_with("alloys.yaml",
                             "- {alloy: zinc, name: z, density: 6600\xE2\x80\x93"
                             "6700 kg/m3, sources: law}\n"
                             "- {alloy: brass, name: b, balance: Zn, window: {Cu: 60-70 %}, sources: law}\n");
    ASSERT_TRUE(data.alloys[0].density);
    EXPECT_NEAR(data.alloys[0].density->low, 6.6, 1e-12);
    EXPECT_NEAR(data.alloys[0].density->high, 6.7, 1e-12);
    EXPECT_FALSE(data.alloys[0].window);
    EXPECT_FALSE(data.alloys[1].density);
}

struct Row {
    std::string_view name, text, want;
};

// A third alloy behind the two that candidates name, on line 4.
constexpr Row kRows[] = {
    {"right", "- {alloy: a, name: A, density: 1-2 g/cm3, sources: law}\n", ""},
    {"text_for_an_entry", "- a\n", "4:3 wrong-type"},
    {"unknown_key", "- {alloy: a, name: A, weight: 3, density: 1-2 g/cm3, sources: law}\n", "4:23 unknown-key"},
    {"nothing_but_a_name", "- {alloy: a}\n", "4:3 missing-key; 4:3 missing-key; 4:3 missing-key"},
    {"bad_id", "- {alloy: A alloy, name: A, density: 1-2 g/cm3, sources: law}\n", "4:11 bad-id"},
    {"twice", "- {alloy: zinc, name: A, density: 1-2 g/cm3, sources: law}\n", "4:11 duplicate-alloy"},
    {"density_is_no_range", "- {alloy: a, name: A, density: 2 g/cm3, sources: law}\n", "4:32 bad-range"},
    {"density_upside_down", "- {alloy: a, name: A, density: 2-1 g/cm3, sources: law}\n", "4:32 bad-range"},
    {"density_without_unit", "- {alloy: a, name: A, density: 1-2, sources: law}\n", "4:32 bad-range"},
    {"density_in_mm", "- {alloy: a, name: A, density: 1-2 mm, sources: law}\n", "4:32 bad-range"},
    {"density_of_nothing", "- {alloy: a, name: A, density: 0-2 g/cm3, sources: law}\n", "4:32 bad-range"},
    {"density_beyond_osmium", "- {alloy: a, name: A, density: 6600-6700 g/cm3, sources: law}\n", "4:32 bad-range"},
    {"unknown_element", "- {alloy: a, name: A, balance: Zn, window: {Xx: 1-2}, sources: law}\n",
     "4:45 unknown-element"},
    {"element_in_capitals", "- {alloy: a, name: A, balance: ZN, window: {Cu: 1-2}, sources: law}\n",
     "4:32 unknown-element"},
    {"window_upside_down", "- {alloy: a, name: A, balance: Zn, window: {Cu: 2-1}, sources: law}\n", "4:49 bad-range"},
    {"window_above_100", "- {alloy: a, name: A, balance: Zn, window: {Cu: 90-101}, sources: law}\n", "4:49 bad-range"},
    {"window_in_grams", "- {alloy: a, name: A, balance: Zn, window: {Cu: 1-2 g}, sources: law}\n", "4:49 bad-range"},
    {"window_is_a_list", "- {alloy: a, name: A, balance: Zn, window: [Cu], sources: law}\n", "4:44 wrong-type"},
    {"balance_in_window", "- {alloy: a, name: A, balance: Zn, window: {Zn: 1-2, Cu: 1-2}, sources: law}\n",
     "4:45 bad-window"},
    {"lows_above_100", "- {alloy: a, name: A, balance: Zn, window: {Cu: 60-70, Al: 50-60}, sources: law}\n",
     "4:44 bad-window"},
    {"highs_below_100", "- {alloy: a, name: A, window: {Cu: 60-70, Al: 10-20}, sources: law}\n", "4:31 bad-window"},
    {"tolerance_of_nothing",
     "- {alloy: a, name: A, balance: Zn, window: {Cu: 1-2}, tolerance: {Cr: 0.2}, sources: law}\n", "4:67 bad-window"},
    {"tolerance_of_the_balance",
     "- {alloy: a, name: A, balance: Zn, window: {Cu: 1-2}, tolerance: {Zn: 0.2}, sources: law}\n", "4:67 bad-window"},
    {"negative_tolerance", "- {alloy: a, name: A, balance: Zn, window: {Cu: 1-2}, tolerance: {Cu: -1}, sources: law}\n",
     "4:71 out-of-range"},
    {"balance_without_window", "- {alloy: a, name: A, density: 1-2 g/cm3, balance: Zn, sources: law}\n",
     "4:43 missing-key"},
    {"unknown_source", "- {alloy: a, name: A, density: 1-2 g/cm3, sources: lore}\n", "4:52 unknown-source"},
};
class AlloyFaults : public testing::TestWithParam<Row> {};
TEST_P(AlloyFaults, AreToldWithTheirPlace) {
    EXPECT_EQ(
        support::faults_with("alloys.yaml", support::small_evidence().at("alloys.yaml") + std::string(GetParam().text)),
        GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, AlloyFaults, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace grainside::evidence
