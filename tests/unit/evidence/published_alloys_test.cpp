// The windows of rules/alloys.yaml against the standards and charts that it names, percent by mass. Carbon, phosphorus,
// sulphur and nitrogen are left out there, since no reader of a bench sees them. Where two charts differ, the wider
// stands: magnesium of zinc alloys is that of ASTM B86, of which 3 was seen, and of the maker's table for 5.
#include <gtest/gtest.h>

#include <algorithm>
#include <string_view>
#include <vector>

#include "evidence/evidence_data.h"
#include "grainside/evidence_book.h"
#include "grainside/rule_book.h"

namespace grainside::evidence {
namespace {

struct Row {
    std::string_view alloy, source;
    std::vector<measure::ElementRange> elements;
};

const Row kRows[] = {
    {"zinc-alloy-3",
     "EN 12844:1998 ZP0400; ASTM B86-18 alloy 3 (seen)",
     {{"Al", 3.7, 4.3, 0},
      {"Cu", 0, 0.1, 0},
      {"Mg", 0.02, 0.06, 0},
      {"Pb", 0, 0.005, 0},
      {"Cd", 0, 0.005, 0},
      {"Sn", 0, 0.002, 0},
      {"Fe", 0, 0.05, 0},
      {"Ni", 0, 0.02, 0},
      {"Si", 0, 0.03, 0}}},
    {"zinc-alloy-5",
     "EN 12844:1998 ZP0410 (seen)",
     {{"Al", 3.7, 4.3, 0},
      {"Cu", 0.7, 1.2, 0},
      {"Mg", 0.02, 0.06, 0},
      {"Pb", 0, 0.005, 0},
      {"Cd", 0, 0.005, 0},
      {"Sn", 0, 0.002, 0},
      {"Fe", 0, 0.05, 0},
      {"Ni", 0, 0.02, 0},
      {"Si", 0, 0.03, 0}}},
    {"zinc-alloy-2",
     "EN 12844:1998 ZP0430 (seen)",
     {{"Al", 3.7, 4.3, 0},
      {"Cu", 2.7, 3.3, 0},
      {"Mg", 0.02, 0.06, 0},
      {"Pb", 0, 0.005, 0},
      {"Cd", 0, 0.005, 0},
      {"Sn", 0, 0.002, 0},
      {"Fe", 0, 0.05, 0},
      {"Ni", 0, 0.02, 0},
      {"Si", 0, 0.03, 0}}},
    {"brass-cw508l",
     "EN 12163, EN 1652 (seen)",
     {{"Cu", 62, 64, 0},
      {"Pb", 0, 0.1, 0},
      {"Al", 0, 0.05, 0},
      {"Fe", 0, 0.1, 0},
      {"Ni", 0, 0.3, 0},
      {"Sn", 0, 0.1, 0}}},
    {"brass-cw614n",
     "EN 12164, EN 12165, EN 12167 (seen)",
     {{"Cu", 57, 59, 0},
      {"Pb", 2.5, 3.5, 0},
      {"Al", 0, 0.05, 0},
      {"Fe", 0, 0.3, 0},
      {"Ni", 0, 0.3, 0},
      {"Sn", 0, 0.3, 0}}},
    {"brass-cw617n",
     "EN 12164, EN 12165, EN 12167 (seen)",
     {{"Cu", 57, 59, 0},
      {"Pb", 1.6, 2.5, 0},
      {"Al", 0, 0.05, 0},
      {"Fe", 0, 0.3, 0},
      {"Ni", 0, 0.3, 0},
      {"Sn", 0, 0.3, 0}}},
    {"brass-c36000", "ASTM B16 (seen)", {{"Cu", 60, 63, 0}, {"Pb", 2.5, 3, 0}, {"Fe", 0, 0.35, 0}}},
    {"brass-c26000", "ASTM B36 (seen)", {{"Cu", 68.5, 71.5, 0}, {"Pb", 0, 0.07, 0}, {"Fe", 0, 0.05, 0}}},
    // Chromium from ISO 15510 (17.5) to the American chart (20), nickel from 8 to 11.
    {"stainless-steel-304",
     "AISI chart of 304; ISO 15510 4301-304-00-I (seen)",
     {{"Cr", 17.5, 20, 0}, {"Ni", 8, 11, 0}, {"Mn", 0, 2, 0}, {"Si", 0, 1, 0}}},
    {"stainless-steel-316",
     "AISI chart of 316; ISO 15510 4404-316-03-I (seen)",
     {{"Cr", 16, 18.5, 0}, {"Ni", 10, 14, 0}, {"Mo", 2, 3, 0}, {"Mn", 0, 2, 0}, {"Si", 0, 1, 0}}},
    {"stainless-steel-201",
     "AISI chart of 201 (seen)",
     {{"Cr", 16, 18, 0}, {"Ni", 3.5, 5.5, 0}, {"Mn", 5.5, 7.5, 0}, {"Si", 0, 1, 0}}},
    {"stainless-steel-430",
     "AISI chart of 430 (from memory)",
     {{"Cr", 16, 18, 0}, {"Ni", 0, 0.75, 0}, {"Mn", 0, 1, 0}, {"Si", 0, 1, 0}}},
    {"aluminium-adc12",
     "JIS H 5302:2006 (seen)",
     {{"Si", 9.6, 12, 0},
      {"Cu", 1.5, 3.5, 0},
      {"Mg", 0, 0.3, 0},
      {"Zn", 0, 1, 0},
      {"Fe", 0, 1.3, 0},
      {"Mn", 0, 0.5, 0},
      {"Ni", 0, 0.5, 0},
      {"Sn", 0, 0.2, 0},
      {"Pb", 0, 0.2, 0},
      {"Ti", 0, 0.3, 0}}},
    {"aluminium-6061",
     "EN 573-3 (from memory)",
     {{"Si", 0.4, 0.8, 0},
      {"Mg", 0.8, 1.2, 0},
      {"Cu", 0.15, 0.4, 0},
      {"Cr", 0.04, 0.35, 0},
      {"Fe", 0, 0.7, 0},
      {"Mn", 0, 0.15, 0},
      {"Zn", 0, 0.25, 0},
      {"Ti", 0, 0.15, 0}}},
    {"aluminium-6063",
     "EN 573-3 (from memory)",
     {{"Si", 0.2, 0.6, 0},
      {"Mg", 0.45, 0.9, 0},
      {"Cu", 0, 0.1, 0},
      {"Cr", 0, 0.1, 0},
      {"Fe", 0, 0.35, 0},
      {"Mn", 0, 0.1, 0},
      {"Zn", 0, 0.1, 0},
      {"Ti", 0, 0.1, 0}}},
};

TEST(PublishedAlloys, AreThoseOfTheDefaultBook) {
    const auto rules = RuleBook::built_in();
    ASSERT_TRUE(rules);
    const auto book = EvidenceBook::load(rules.value());
    ASSERT_TRUE(book);
    const auto& alloys = book.value().data().alloys;
    for (const Row& row : kRows) {
        const auto alloy =
            std::find_if(alloys.begin(), alloys.end(), [&](const Alloy& one) { return one.id == row.alloy; });
        ASSERT_NE(alloy, alloys.end()) << row.alloy;
        ASSERT_TRUE(alloy->window) << row.alloy;
        for (const measure::ElementRange& wanted : row.elements) {
            const auto& all = alloy->window->elements;
            const auto found = std::find_if(
                all.begin(), all.end(), [&](const measure::ElementRange& one) { return one.symbol == wanted.symbol; });
            ASSERT_NE(found, all.end()) << row.alloy << " " << wanted.symbol;
            EXPECT_EQ(found->low, wanted.low) << row.alloy << " " << wanted.symbol << ", " << row.source;
            EXPECT_EQ(found->high, wanted.high) << row.alloy << " " << wanted.symbol << ", " << row.source;
        }
    }
}

}  // namespace
}  // namespace grainside::evidence
