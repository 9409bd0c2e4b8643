// A survey against a catalog counted by hand, and the same survey whatever way the listings are dealt out.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "grainside/survey.h"
#include "grainside/survey_report.h"
#include "measure/proportion.h"

namespace grainside {
namespace {

const RuleBook& book() {
    static const RuleBook built_in = std::move(RuleBook::built_in()).value();
    return built_in;
}

struct Offer {
    std::string id, seller, region, category, text;
};

void add(SurveyTally& tally, Checker& checker, const Offer& offer) {
    Listing listing;
    listing.id = offer.id;
    listing.seller = offer.seller;
    listing.region = offer.region;
    listing.fields = {{"description", offer.text}, {"category", offer.category}};
    tally.add(listing, checker.check(listing), checker);
}

// Two listings with misleading words, one with words without proof, two without a finding.
const std::vector<Offer> kCatalog = {
    {"om-1", "Ondemar Workshop", "", "tote bag", "Body: vegan leather. Lining: cotton."},
    {"om-2", " ondemar  workshop", "US", "tote bag", "Body: Vegan  Leather. Lining: cotton. Eco-friendly."},
    {"om-3", "Ondemar Workshop", "", "tote bag", "Body: cotton canvas."},
    {"vo-1", "Velmora Outlet", "US GB", "belt", "Waterproof belt in cowhide."},
    {"x-1", "", "", "belt", "Belt in cowhide."},
};

Survey survey_of(const std::vector<Offer>& offers, const SurveyOptions& options = {}) {
    Checker checker(book());
    SurveyTally tally(book(), options);
    for (const Offer& offer : offers) add(tally, checker, offer);
    return tally.survey();
}

constexpr auto kMisleading = static_cast<std::size_t>(Grade::misleading);
constexpr auto kUnsupported = static_cast<std::size_t>(Grade::unsupported);
constexpr auto kVague = static_cast<std::size_t>(Grade::vague);

const SurveyGroup& named(const std::vector<SurveyGroup>& groups, std::string_view name) {
    static const SurveyGroup none;
    const auto found =
        std::find_if(groups.begin(), groups.end(), [&](const SurveyGroup& group) { return group.name == name; });
    EXPECT_NE(found, groups.end()) << name;
    return found == groups.end() ? none : *found;
}

TEST(SurveyTally, CountsWhatWasCountedByHand) {
    const Survey survey = survey_of(kCatalog);
    EXPECT_EQ(survey.all.listings, 5U);
    EXPECT_EQ(survey.all.by_worst[kMisleading], 2U);
    EXPECT_EQ(survey.all.by_worst[kUnsupported], 1U);
    EXPECT_EQ(survey.all.by_worst.back(), 2U);
    EXPECT_EQ(survey.all.rates[kMisleading].count, 2U);
    EXPECT_EQ(survey.all.rates[kVague].count, 3U);
    EXPECT_DOUBLE_EQ(survey.all.rates[kVague].rate, 0.6);
    const measure::ShareLimits limits = measure::wilson_limits({3, 5}, 0.95);
    EXPECT_EQ(survey.all.rates[kVague].low, limits.low);
    EXPECT_EQ(survey.all.rates[kVague].high, limits.high);
    // 'vegan leather', however it is spelled, and 'eco-friendly', which misleads in the United States (16 CFR 260.4).
    EXPECT_EQ(survey.all.wordings.count, 2U);
}

TEST(SurveyTally, KnowsASellerWhateverTheSpelling) {
    const Survey survey = survey_of(kCatalog);
    EXPECT_EQ(survey.different_sellers.count, 2U);
    ASSERT_EQ(survey.sellers.size(), 3U);
    EXPECT_EQ(survey.sellers.front().name, "Ondemar Workshop");
    EXPECT_EQ(survey.sellers.front().listings, 3U);
    EXPECT_EQ(survey.sellers.front().rates[kMisleading].count, 2U);
    EXPECT_EQ(named(survey.sellers, "Velmora Outlet").rates[kUnsupported].count, 1U);
    EXPECT_EQ(named(survey.sellers, "").listings, 1U);
}

// How a shop writes its name from feed to feed. Unicode's forms: UAX 15; the ideographic space and the wide letters are
// compatibility forms there.
TEST(SurveyTally, TakesSpellingsOfOneNameForOneSeller) {
    for (const std::string_view other : {
             "HARROW & PINE", "harrow & pine", "  Harrow  &\tPine ",
             "Harrow\xC2\xA0&\xC2\xA0Pine",  // no-break spaces
             "Harrow\xE3\x80\x80& Pine",     // an ideographic space
             "Harrow &amp; Pine",            // as it comes out of a page
             "Harrow \xEF\xBC\x86 Pine",     // a full-width ampersand
             "\xEF\xBC\xA8"
             "arrow & Pine",               // a full-width H
             "Har\xE2\x80\x8Brow & Pine",  // a zero-width space
         }) {
        const Survey survey = survey_of(
            {{"a", "Harrow & Pine", "", "bag", "Waterproof."}, {"b", std::string(other), "", "bag", "Waterproof."}});
        EXPECT_EQ(survey.different_sellers.count, 1U) << other;
        ASSERT_EQ(survey.sellers.size(), 1U) << other;
        EXPECT_EQ(survey.sellers.front().listings, 2U) << other;
        ASSERT_EQ(survey.wordings.size(), 1U) << other;
        EXPECT_EQ(survey.wordings.front().sellers.count, 1U) << other;
    }
    const Survey composed = survey_of({{"a", "Atelier L\xC3\xA9on", "", "bag", ""},
                                       {"b", "ATELIER LE\xCC\x81ON", "", "bag", ""},
                                       {"c", "Gro\xC3\x9Fmann", "", "bag", ""},
                                       {"d", "GROSSMANN", "", "bag", ""}});
    EXPECT_EQ(composed.different_sellers.count, 2U);
}

// Whether a word for '&' or a company's form makes another shop, nobody can tell from the name.
TEST(SurveyTally, KeepsNamesApartThatMayBeOfTwoSellers) {
    const Survey survey = survey_of({{"a", "Harrow & Pine", "", "bag", ""},
                                     {"b", "HARROW AND PINE", "", "bag", ""},
                                     {"c", "Harrow & Pine Ltd.", "", "bag", ""},
                                     {"d", "Harrow & Pine GmbH", "", "bag", ""},
                                     {"e", "Harrow + Pine", "", "bag", ""}});
    EXPECT_EQ(survey.different_sellers.count, 5U);
}

TEST(SurveyTally, CountsAListingInEachOfItsMarkets) {
    const Survey survey = survey_of(kCatalog);
    EXPECT_EQ(named(survey.markets, "us").listings, 2U);
    EXPECT_EQ(named(survey.markets, "uk").listings, 1U);
    EXPECT_EQ(named(survey.markets, "").listings, 3U);
    // Those asked for count for all.
    SurveyOptions options;
    options.markets = {"us"};
    ASSERT_EQ(survey_of(kCatalog, options).markets.size(), 1U);
    EXPECT_EQ(named(survey_of(kCatalog, options).markets, "us").listings, 5U);
}

TEST(SurveyTally, CountsClaimsByPartAndListingsByRule) {
    const Survey survey = survey_of(kCatalog);
    const auto body = std::find_if(survey.parts.begin(), survey.parts.end(),
                                   [](const SurveyPart& part) { return part.part == Part::body; });
    ASSERT_NE(body, survey.parts.end());
    EXPECT_EQ(body->rates[kMisleading].count, 2U);
    const auto lining = std::find_if(survey.parts.begin(), survey.parts.end(),
                                     [](const SurveyPart& part) { return part.part == Part::lining; });
    ASSERT_NE(lining, survey.parts.end());
    EXPECT_EQ(lining->claims, 2U);
    EXPECT_EQ(lining->rates[kVague].count, 0U);
    std::uint64_t listings = 0;
    for (const SurveyRule& rule : survey.rules) {
        if (book().rules()[rule.count.rule].id.starts_with("vegan-called-leather"))
            listings += rule.count.listings.count;
        EXPECT_EQ(rule.count.listings.of, 5U);
        EXPECT_EQ(rule.sellers, 1U);
    }
    EXPECT_EQ(listings, 2U);
}

TEST(SurveyTally, PutsTheWorstFirst) {
    SurveyOptions options;
    options.top = 2;
    const Survey survey = survey_of(kCatalog, options);
    ASSERT_EQ(survey.worst.size(), 2U);
    EXPECT_EQ(survey.worst[0].id, "om-2");
    EXPECT_EQ(survey.worst[0].by_grade[kMisleading], 2U);
    EXPECT_EQ(survey.worst[1].id, "om-1");
    EXPECT_EQ(survey.worst[1].words, "vegan leather");
    EXPECT_EQ(survey.wordings.size(), 2U);
    options.top = 0;
    EXPECT_TRUE(survey_of(kCatalog, options).worst.empty());
    EXPECT_TRUE(survey_of(kCatalog, options).wordings.empty());
}

TEST(SurveyTally, CountsAWordingOnceAListing) {
    const Survey survey = survey_of(
        {{"a", "S", "", "bag", "Waterproof. Lining: waterproof cotton."}, {"b", "T", "", "bag", "WATERPROOF bag."}});
    ASSERT_FALSE(survey.wordings.empty());
    EXPECT_EQ(survey.wordings.front().words, "waterproof");
    EXPECT_EQ(survey.wordings.front().listings, 2U);
    EXPECT_EQ(survey.wordings.front().sellers.count, 2U);
    EXPECT_EQ(survey.wordings.front().listing, "a");
}

TEST(SurveyTally, SaysWhichSellersDifferAndHowManyMoreToRead) {
    std::vector<Offer> offers;
    for (int i = 0; i < 40; ++i) {
        const std::string number = std::to_string(i);
        offers.push_back({"a" + number, "Much", "", "bag", i < 30 ? "Body: vegan leather." : "Body: cotton."});
        offers.push_back({"b" + number, "Little", "", "bag", i < 2 ? "Body: vegan leather." : "Body: cotton."});
    }
    offers.push_back({"c", "One", "", "bag", "Body: cotton."});
    const Survey survey = survey_of(offers);
    EXPECT_EQ(named(survey.sellers, "Much").standing, SurveyStanding::above);
    EXPECT_EQ(named(survey.sellers, "Little").standing, SurveyStanding::below);
    EXPECT_EQ(named(survey.sellers, "One").standing, SurveyStanding::chance);
    EXPECT_EQ(named(survey.sellers, "Little").further, 0U);
    const std::uint64_t needed = measure::number_for_half_width(0.75, 0.1, 0.95);
    EXPECT_EQ(named(survey.sellers, "Much").further, needed - 40);
    // Wilson's half width for 0 of n is z^2 / (2 (n + z^2)): 0.1 from 16 on.
    EXPECT_EQ(named(survey.sellers, "One").further, 15U);
    // One group alone has nothing to be held against.
    EXPECT_EQ(survey.categories.front().standing, SurveyStanding::not_compared);
}

std::string json_of(const SurveyTally& tally) {
    std::string text;
    const Survey survey = tally.survey();
    write_survey_json({book(), survey}, text);
    return text;
}

TEST(SurveyTally, ComesToTheSameHoweverTheListingsAreDealtOut) {
    constexpr std::string_view kTexts[] = {"Body: vegan leather.",      "Body: VEGAN leather. Durable.",
                                           "Waterproof bag.",           "Cotton bag.",
                                           "Eco-friendly, waterproof.", "Genuine PU leather bag."};
    constexpr std::string_view kSellers[] = {"Ondemar", "ONDEMAR", "Velmora", "", "Casa Tarviso"};
    constexpr std::string_view kRegions[] = {"", "US", "GB US"};
    std::mt19937 random(3);
    std::vector<Offer> offers;
    for (int i = 0; i < 300; ++i) {
        // Some ids come twice.
        offers.push_back({"l" + std::to_string(random() % 200), std::string(kSellers[random() % 5]),
                          std::string(kRegions[random() % 3]), random() % 2 == 0 ? "bag" : "belt",
                          std::string(kTexts[random() % 6])});
    }
    Checker checker(book());
    SurveyTally whole(book());
    for (const Offer& offer : offers) add(whole, checker, offer);
    const std::string expected = json_of(whole);
    for (std::size_t count : {2U, 3U, 7U}) {
        std::shuffle(offers.begin(), offers.end(), random);
        std::vector<SurveyTally> parts;
        for (std::size_t at = 0; at < count; ++at) parts.emplace_back(book());
        for (std::size_t at = 0; at < offers.size(); ++at) {
            // The first takes more after it has taken over another.
            if (at == offers.size() / 2) {
                parts[0].merge(std::move(parts[count - 1]));
                parts[count - 1] = SurveyTally(book());
            }
            add(parts[random() % count], checker, offers[at]);
        }
        for (std::size_t at = count - 1; at > 0; --at) parts[0].merge(std::move(parts[at]));
        EXPECT_EQ(json_of(parts[0]), expected) << count;
    }
}

TEST(SurveyView, StaysWithinItsWidth) {
    std::vector<Offer> offers = kCatalog;
    offers.push_back({std::string(300, 'i'), std::string(300, 's'), "US", "bag", "Body: vegan leather."});
    const Survey survey = survey_of(offers);
    for (const std::size_t width : {std::size_t{40}, std::size_t{64}, std::size_t{120}}) {
        std::string text;
        write_survey_view({book(), survey}, {false, width}, text);
        // What every view ends with has a width of its own.
        text.resize(text.find("This is not legal advice"));
        for (std::size_t at = 0; at < text.size();) {
            const std::size_t end = text.find('\n', at);
            EXPECT_LE(end - at, width) << text.substr(at, end - at);
            at = end + 1;
        }
    }
}

TEST(SurveyTally, SaysNothingOfNothing) {
    const Survey survey = survey_of({});
    EXPECT_EQ(survey.all.listings, 0U);
    EXPECT_EQ(survey.all.rates[kVague].low, 0);
    EXPECT_EQ(survey.all.rates[kVague].high, 1);
    EXPECT_TRUE(survey.sellers.empty());
    std::string text;
    write_survey_view({book(), survey}, {}, text);
    EXPECT_TRUE(text.starts_with("no listings\n")) << text;
}

}  // namespace
}  // namespace grainside
