// What the evidence half of the default book says, against sources and against itself: densities, finenesses, which
// limit is for which goods. Numbers without a source are not repeated here.
#include <gtest/gtest.h>

#include <algorithm>
#include <bit>
#include <string>
#include <string_view>

#include "evidence/evidence_data.h"
#include "evidence/quantity_names.h"
#include "measure/fineness.h"
#include "rules/book_data.h"
#include "support/built_in_evidence.h"

namespace grainside::evidence {
namespace {

using support::limit_named;

const EvidenceData& data() {
    return support::built_in_evidence().data();
}

const Alloy& alloy_named(std::string_view id) {
    const auto& alloys = data().alloys;
    return *std::find_if(alloys.begin(), alloys.end(), [&](const Alloy& one) { return one.id == id; });
}

// ---- densities -----------------------------------------------------------------------------------------------------

struct DensityRow {
    std::string_view alloy;
    double low, high;  // g/cm3
    std::string_view source;
};

constexpr DensityRow kDensities[] = {
    {"zinc-alloy-3", 6.4, 6.8, "data sheets 6.6 to 6.7, porous castings 6.4 to 6.8 (seen)"},
    {"zinc-alloy-5", 6.4, 6.8, "as above"},
    {"zinc-alloy-2", 6.5, 6.8, "data sheets 6.6 to 6.8, porous castings less (seen)"},
    {"brass-cw614n", 8.4, 8.47, "data sheets of leaded brasses (seen)"},
    {"brass-cw617n", 8.4, 8.47, "as above"},
    {"brass-c36000", 8.47, 8.5, "data sheet of C36000 (seen)"},
    {"brass-c26000", 8.5, 8.55, "data sheet of C26000 (seen)"},
    {"bronze", 8.78, 8.92, "phosphor bronze, density tables (seen)"},
    {"stainless-steel-304", 7.88, 8, "EN 10088-1, annex (from memory)"},
    {"stainless-steel-316", 7.95, 8.03, "EN 10088-1, annex (from memory)"},
    {"stainless-steel-201", 7.78, 7.88, "EN 10088-1, annex (from memory)"},
    {"stainless-steel-430", 7.68, 7.76, "EN 10088-1, annex (from memory)"},
    {"aluminium-6061", 2.7, 2.72, "alloy data (seen)"},
    {"aluminium-6063", 2.69, 2.7, "alloy data (from memory)"},
    {"aluminium-adc12", 2.68, 2.76, "makers' sheets (seen; the upper figure from memory)"},
};

TEST(PublishedDensities, AreThoseOfTheDefaultBook) {
    for (const DensityRow& row : kDensities) {
        const Alloy& alloy = alloy_named(row.alloy);
        ASSERT_TRUE(alloy.density) << row.alloy;
        EXPECT_DOUBLE_EQ(alloy.density->low, row.low) << row.alloy << ", " << row.source;
        EXPECT_DOUBLE_EQ(alloy.density->high, row.high) << row.alloy << ", " << row.source;
    }
}

// Of the others no range is printed that could be held against: pure copper is 8.96, silver 10.49 (sterling less),
// gold 19.32, iron 7.87 (density tables, seen; iron from memory).
TEST(PublishedDensities, OfTheElementsBoundTheirAlloys) {
    const auto range = [](std::string_view id) { return *alloy_named(id).density; };
    EXPECT_DOUBLE_EQ(range("copper").high, 8.96);
    EXPECT_DOUBLE_EQ(range("carbon-steel").high, 7.87);
    EXPECT_LT(range("sterling-silver").high, 10.49);
    EXPECT_GT(range("sterling-silver").high, 10.36);  // 92.5 parts of silver and 7.5 of copper, volumes added
    EXPECT_LT(range("sterling-silver").low, 10.36);
    EXPECT_GE(range("karat-gold").high, 19.32);
    // 9 karat with copper alone, volumes added: 1 / (0.375 / 19.32 + 0.625 / 8.96).
    EXPECT_LT(range("karat-gold").low, 11.22);
    EXPECT_GT(range("karat-gold").low, range("sterling-silver").high);
}

// ---- finenesses ----------------------------------------------------------------------------------------------------

// 15 U.S.C. 295: 3 parts in a thousand may be missing of gold; 296: 4 of silver. Karats are parts of 24 (ISO 9202
// rounds them to whole parts). Britain allows nothing below the standard (from memory). Two decimals of a percent are
// printed.
TEST(PublishedFinenesses, AreThoseOfTheLimits) {
    struct Row {
        std::string_view limit;
        double karat, may_be_missing;
    };
    for (const Row& row :
         {Row{"gold-24k-fineness", 24, 3}, Row{"gold-22k-fineness", 22, 3}, Row{"gold-18k-fineness", 18, 3},
          Row{"gold-14k-fineness", 14, 3}, Row{"gold-10k-fineness", 10, 3}, Row{"gold-9k-fineness-uk", 9, 0},
          Row{"sterling-fineness", 0.925 * 24, 4}}) {
        const Limit& held = limit_named(row.limit);
        const double percent = (measure::parts_per_thousand_of_karat(row.karat).value() - row.may_be_missing) / 10;
        ASSERT_TRUE(held.supports && held.supports->lower && held.contradicts && held.contradicts->upper) << row.limit;
        EXPECT_NEAR(*held.supports->lower, percent, 0.005) << row.limit;
        EXPECT_EQ(*held.contradicts->upper, *held.supports->lower) << row.limit;
        EXPECT_TRUE(held.supports->lower_inclusive) << row.limit;
        EXPECT_FALSE(held.contradicts->upper_inclusive) << row.limit;
    }
}

// ---- limits --------------------------------------------------------------------------------------------------------

// Directive 94/11/EC speaks of footwear, EN 15987 of what is no footwear; EN 13512 of uppers, EN 13336 of furniture,
// other goods by analogy: each kind of product has one of the two, and not both.
TEST(Limits, OfTwoKindsOfGoodsShareThem) {
    const auto all = static_cast<std::uint32_t>(
        (std::uint64_t{1} << support::built_in_book().data().vocabulary.categories.size()) - 1);
    const std::pair<std::string_view, std::string_view> pairs[] = {
        {"coat-of-leather-eu", "coat-of-leather-footwear-eu"},
        {"crack-resistant-flexes", "crack-resistant-flexes-footwear"},
    };
    for (const auto& [rest, footwear] : pairs) {
        EXPECT_EQ(std::popcount(limit_named(footwear).categories), 1) << footwear;
        EXPECT_EQ(limit_named(rest).categories & limit_named(footwear).categories, 0U) << rest;
        EXPECT_EQ(limit_named(rest).categories | limit_named(footwear).categories, all) << rest;
    }
    // The Italian and the French law on the names of leather leave footwear to the Directive.
    for (const std::string_view id : {"coat-of-leather-it", "share-of-coated-leather-it", "leather-fibre-share-fr"}) {
        EXPECT_EQ(limit_named(id).categories, limit_named("coat-of-leather-eu").categories) << id;
    }
}

// A part is tanned with chromium where one can ask how it is tanned.
TEST(Limits, OfChromiumAreForThePartsThatAreTanned) {
    EXPECT_EQ(limit_named("chrome-free-parts").within_parts, data().frames[support::frame_named("tannage")].parts);
}

// Every limit can be decided: some method reads or works out its quantity, or some candidate is what must not be there.
TEST(Limits, CanAllBeDecided) {
    const auto& tree = support::built_in_book().data().vocabulary.concepts;
    for (const Limit& one : data().limits) {
        if (one.quantity.empty()) {
            for (const ConceptId absent : one.no_part_is) {
                bool met = false;
                for (const Frame& frame : data().frames) {
                    if ((frame.parts & one.within_parts) == 0) continue;
                    for (const Candidate& candidate : frame.candidates) {
                        met = met || (candidate.is != 0 && tree.is_a(candidate.is, absent));
                    }
                }
                const bool rare = tree[absent].name == "latex" || tree[absent].name == "natural-rubber" ||
                                  tree[absent].name == "latex-foam" || tree[absent].name == "chrome-retanned";
                EXPECT_TRUE(met || rare) << one.id << ": no part is ever " << tree[absent].name;
            }
            continue;
        }
        const std::string_view quantity = std::string_view(one.quantity).substr(0, one.quantity.find('.'));
        EXPECT_TRUE(std::any_of(data().methods.begin(), data().methods.end(),
                                [&](const Method& method) {
                                    const auto computed = computed_by(method.computes);
                                    return reads(method, quantity) ||
                                           std::any_of(computed.begin(), computed.end(),
                                                       [&](const auto& other) { return other.name == quantity; });
                                }))
            << one.id << " asks for " << one.quantity << ", which nobody reads";
    }
}

}  // namespace
}  // namespace grainside::evidence
