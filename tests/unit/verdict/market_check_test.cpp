// MarketCheck against a Checker of its own for each market and day, and days of the calendar (ISO 8601; Gregorian leap
// years: divisible by 4, not by 100 unless by 400).
#include "grainside/market_check.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include "grainside/checker.h"
#include "verdict/market_days.h"

namespace grainside {
namespace {

struct DayRow {
    std::string_view day, next;
};
constexpr DayRow kDays[] = {{"2026-11-26", "2026-11-27"}, {"2026-12-31", "2027-01-01"}, {"2027-02-28", "2027-03-01"},
                            {"2028-02-28", "2028-02-29"}, {"2100-02-28", "2100-03-01"}, {"2000-02-28", "2000-02-29"},
                            {"9999-12-31", ""},           {"2026-02-30", ""},           {"", ""}};

TEST(MarketDays, FollowTheCalendar) {
    for (const DayRow& row : kDays) EXPECT_EQ(verdict::next_day(row.day), row.next) << row.day;
}

using Found = std::tuple<std::uint32_t, std::uint32_t, std::uint32_t, std::uint32_t, std::string>;

constexpr std::string_view kTexts[] = {
    "Eco-friendly tote in faux leather, 100% recyclable. Genuine PU leather strap.",
    "Full grain calf belt, 3.5 mm, solid brass buckle. Bonded leather keeper. Made in Italy.",
    "Vegan leather backpack, waterproof, biodegradable lining, nickel-free hardware, bamboo fibre.", "Leather wallet."};
constexpr std::string_view kOnDays[] = {"1990-01-01", "2026-09-26", "2026-09-27", "2026-11-26", "2040-01-01"};

TEST(MarketCheck, FindsWhatACheckerOfTheMarketFinds) {
    const Result<RuleBook> loaded = RuleBook::built_in();
    ASSERT_TRUE(loaded);
    const RuleBook& book = loaded.value();
    std::size_t compared = 0;
    for (const std::string_view day : kOnDays) {
        MarketCheck markets(book, {{}, std::string(day), Grade::misleading});
        for (const std::string_view text : kTexts) {
            Listing listing;
            listing.fields = {{"name", "Autumn"}, {"description", text}};
            const auto answers = markets.check(listing);
            ASSERT_EQ(answers.size(), book.markets().size());
            for (const MarketAnswer& answer : answers) {
                Checker checker(book, {{answer.market}, std::string(day)});
                const CheckResult& result = checker.check(listing);
                std::vector<Found> wanted;
                bool stands = true;
                for (const Finding& finding : result.findings) {
                    wanted.emplace_back(result.mentions[finding.claim].field, finding.start, finding.end, finding.rule,
                                        checker.say_instead(listing, finding));
                    stands = stands && finding.grade > Grade::misleading;
                }
                std::vector<Found> found;
                for (const MarketFinding& one : answer.findings) {
                    found.emplace_back(one.field, one.start, one.end, one.rule, one.say_instead);
                }
                EXPECT_EQ(found, wanted) << answer.market << ' ' << day << ' ' << text;
                EXPECT_EQ(answer.stands, stands) << answer.market << ' ' << day << ' ' << text;
                compared += wanted.size();
            }
        }
    }
    EXPECT_GT(compared, 100U);
}

// After the last change that is told, a check of a much later day comes to the same.
TEST(MarketCheck, TellsHowItEnds) {
    const Result<RuleBook> loaded = RuleBook::built_in();
    ASSERT_TRUE(loaded);
    MarketCheck now(loaded.value(), {{}, "1990-01-01", Grade::misleading});
    MarketCheck later(loaded.value(), {{}, "2090-01-01", Grade::misleading});
    Listing listing;
    listing.fields = {{"description", kTexts[0]}};
    const auto first = now.check(listing);
    const auto last = later.check(listing);
    std::size_t changes = 0;
    for (std::size_t i = 0; i < first.size(); ++i) {
        changes += first[i].changes.size();
        EXPECT_FALSE(first[i].more_days);
        EXPECT_EQ(first[i].changes.empty() ? first[i].stands : first[i].changes.back().stands, last[i].stands)
            << first[i].market;
        EXPECT_TRUE(last[i].changes.empty());
    }
    EXPECT_GT(changes, 0U);
}

}  // namespace
}  // namespace grainside
