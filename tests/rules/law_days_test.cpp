// The days on which laws and guides took effect, against the rules that hold by them. A rule's first source is its law.
// 'Seen' is the day printed where the text was read; the others are from memory.
#include <gtest/gtest.h>

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>

#include "rules/book_data.h"
#include "support/built_in_evidence.h"

namespace grainside {
namespace {

struct Law {
    std::string_view source;  // an id of rules/sources.yaml, or how those of one law begin
    std::string_view from;
    std::string_view until = "";
};

constexpr Law kLaws[] = {
    {"us-16cfr24", "1996-12-02"},   // 61 FR 51583: with effect from 2 December 1996 (seen)
    {"us-16cfr303", "1960-03-03"},  // Textile Fiber Products Identification Act, 18 months after 2 September 1958
    {"us-bamboo-guidance", "1960-03-03"},        // it applies the same act
    {"us-260", "2012-10-11"},                    // 77 FR 62122, 11 October 2012
    {"sister-substances", "2012-10-11"},         // the same guide, 260.9
    {"us-16cfr23", "2018-08-16"},                // 83 FR 40665, 16 August 2018
    {"us-15usc-297", "2018-08-16"},              // asked with the guide of that day
    {"epa-antibacterial", "2000-03-06"},         // PR Notice 2000-1, 6 March 2000
    {"eu-1007", "2012-05-08"},                   // Regulation (EU) 1007/2011, Art. 28 (seen)
    {"eu-2024-825", "2026-09-27"},               // Directive (EU) 2024/825, Art. 4 (seen)
    {"fr-2010-29", "2011-02-01"},                // Decree 2010-29 (seen)
    {"fr-agec", "2022-01-01"},                   // Law 2020-105, Art. 13
    {"fr-neutral", "2023-01-01", "2026-09-26"},  // until the directive bars such claims altogether
    {"it-dlgs68", "2020-10-24"},                 // D.Lgs. 68/2020 (seen)
    {"uk-dmcc", "2025-04-06"},                   // Part 4, chapter 1 in force (seen)
    {"uk-bonded-ruling", "2025-04-06"},          // held against the same chapter
    {"uk-cma-co", "2021-09-20"},                 // the day that the code was published
    {"au-accc", "2023-12-12"},                   // the day that the guide was published
    {"br-4888", "1965-12-09"},                   // Law 4.888 of 9 December 1965 (seen)
    {"ca-74-01-b1", "2024-06-20"},               // royal assent of Bill C-59
    {"cn-qbt1333", "2011-04-01"},                // QB/T 1333-2010 (seen)
};

// Rules of which the book says that their day is not known, or states none: they hold always.
constexpr std::string_view kWithoutDay[] = {"vegan-with-animal-parts-eu", "sterling-on-plating-us",
                                            "wholly-leather-footwear"};

const Law* law_of(std::string_view source) {
    for (const Law& law : kLaws) {
        if (source.starts_with(law.source)) return &law;
    }
    return nullptr;
}

TEST(LawDays, AreThoseOfTheRules) {
    const RuleBook& book = support::built_in_book();
    std::size_t dated = 0;
    for (const RuleInfo& rule : book.rules()) {
        // Of no market, it holds as what the trade means by its words, whoever wrote that down and when.
        if (rule.markets.empty()) continue;
        ASSERT_FALSE(rule.sources.empty()) << rule.id;
        const std::string& source = book.sources()[rule.sources.front()].id;
        const bool always = std::find(std::begin(kWithoutDay), std::end(kWithoutDay), rule.id) != std::end(kWithoutDay);
        const Law* law = always ? nullptr : law_of(source);
        EXPECT_EQ(rule.from, law == nullptr ? "" : law->from) << rule.id << " by " << source;
        EXPECT_EQ(rule.until, law == nullptr ? "" : law->until) << rule.id << " by " << source;
        if (!rule.from.empty()) ++dated;
    }
    EXPECT_GT(dated, 200U);
}

TEST(LawDays, AreThoseOfTheLimits) {
    const struct {
        std::string_view limit, from, until;
    } rows[] = {
        {"coat-of-leather-footwear-eu", "1996-03-23", ""},  // Directive 94/11/EC, Art. 5 (seen)
        {"coat-of-leather-it", "2020-10-24", ""},           // D.Lgs. 68/2020 (seen)
        {"share-of-coated-leather-it", "2020-10-24", ""},  {"leather-fibre-share-it", "2020-10-24", ""},
        {"leather-fibre-share-fr", "2011-02-01", ""},   // Decree 2010-29 (seen)
        {"chromium-six-in-leather", "2015-05-01", ""},  // Regulation (EU) 301/2014 (seen)
    };
    for (const auto& row : rows) {
        const evidence::Limit& limit = support::limit_named(row.limit);
        EXPECT_EQ(limit.in_force.from, row.from) << row.limit;
        EXPECT_EQ(limit.in_force.until, row.until) << row.limit;
    }
}

// The member states since 1 February 2020: Treaty on European Union, article 52, less the United Kingdom (from memory).
// What holds in the Union holds in each.
TEST(MemberStates, LieWithinTheUnion) {
    for (const std::string_view state :
         {"at", "be", "bg", "hr", "cy", "cz", "dk", "ee", "fi", "fr", "de", "gr", "hu", "ie",
          "it", "lv", "lt", "lu", "mt", "nl", "pl", "pt", "ro", "sk", "si", "es", "se"}) {
        const auto& markets = support::built_in_book().data().markets;
        const auto found =
            std::find_if(markets.begin(), markets.end(), [&](const auto& market) { return market.name == state; });
        ASSERT_NE(found, markets.end()) << state;
        EXPECT_EQ(std::count(found->within.begin(), found->within.end(), "eu"), 1) << state;
    }
}

}  // namespace
}  // namespace grainside
