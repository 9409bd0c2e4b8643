#include "grainside/checker.h"
#include "verdict/proof.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <tuple>
#include <utility>
#include <vector>

#include "labelled_file.h"
#include "support/allocations.h"
#include "support/claim_dump.h"

namespace grainside {
namespace {

const RuleBook& book() {
    static const RuleBook built_in = std::move(RuleBook::built_in()).value();
    return built_in;
}

Listing listing_of(std::string_view text) {
    Listing listing;
    listing.fields.push_back({"description", text});
    return listing;
}

// ---- letters of another script (design.md 4.1) -----------------------------------------------------------------

TEST(Checker, LookAlikeLettersHideNothingAndAreReported) {
    Checker checker(book());
    const Listing plain = listing_of("Genuine PU leather tote.");
    const std::string_view kWritten = "Genuine PU le\u0430ther tote.";  // Cyrillic a
    const std::string wanted = support::dump_findings(book(), plain, checker.check(plain));
    ASSERT_NE(wanted, "");
    ASSERT_FALSE(checker.check(plain).mentions.at(0).look_alike);
    const Listing written = listing_of(kWritten);
    const CheckResult& result = checker.check(written);
    ASSERT_EQ(result.mentions.size(), 1U);
    EXPECT_TRUE(result.mentions[0].look_alike);
    std::string found = support::dump_findings(book(), written, result);
    const std::size_t at = found.find("\u0430");
    ASSERT_NE(at, std::string::npos) << "the words are not those of the listing: " << found;
    EXPECT_EQ(found.replace(at, 2, "a"), wanted);
}

// ---- what to write instead -------------------------------------------------------------------------------------

TEST(Checker, SaysWhatToWriteInstead) {
    Checker checker(book());
    const Listing listing = listing_of("Tote in PU leather.");
    const CheckResult& result = checker.check(listing);
    ASSERT_EQ(result.findings.size(), 1U);
    const std::string instead = checker.say_instead(listing, result.findings[0]);
    EXPECT_EQ(instead, "imitation leather (polyurethane)");
    const Listing reworded = listing_of(instead);
    EXPECT_TRUE(checker.check(reworded).findings.empty());  // promise 5 of design.md
}

TEST(Checker, NeverSuggestsTheWordsThatItFlags) {
    Checker checker(book());
    const Listing listing = listing_of("Tote in \"genuine\" bonded leather.");  // what is wrong stands beside them
    const CheckResult& result = checker.check(listing);
    ASSERT_EQ(result.findings.size(), 1U);
    EXPECT_EQ(checker.say_instead(listing, result.findings[0]), "");
}

// ---- order, counts, markets ------------------------------------------------------------------------------------

TEST(Checker, ResultsAreSortedAndCounted) {
    Checker checker(book());
    Listing listing;
    listing.fields = {{"name", "Genuine PU leather tote, handmade"},
                      {"description", "Waterproof. Premium PVC leather strap, PU leather body."}};
    const CheckResult& result = checker.check(listing);
    std::uint32_t claims = 0;
    for (std::size_t i = 0; i < result.mentions.size(); ++i) {
        const Claim& claim = result.mentions[i];
        claims += is_claim_kind(claim.kind) ? 1U : 0U;
        ASSERT_LT(claim.field, listing.fields.size());
        ASSERT_LE(claim.end, listing.fields[claim.field].text.size());
        if (i == 0) continue;
        const Claim& before = result.mentions[i - 1];
        EXPECT_LE(std::tie(before.field, before.start, before.end, before.kind),
                  std::tie(claim.field, claim.start, claim.end, claim.kind));
    }
    EXPECT_EQ(result.claim_count, claims);
    ASSERT_GT(result.findings.size(), 2U);
    for (std::size_t i = 1; i < result.findings.size(); ++i) {
        const Finding& a = result.findings[i - 1];
        const Finding& b = result.findings[i];
        EXPECT_LT(std::pair(result.mentions[a.claim].field, a.start),
                  std::pair(result.mentions[b.claim].field, b.start));
    }
}

TEST(Checker, AskedForNothingItFindsNothing) {
    Checker checker(book());
    EXPECT_TRUE(checker.check(Listing{}).mentions.empty());
    EXPECT_TRUE(checker.check(listing_of("")).mentions.empty());
    EXPECT_TRUE(checker.check(listing_of(std::string_view("\0\xFF\xFE", 3))).mentions.empty());
}

TEST(Checker, FieldsBeyondTheLimitAreLeftOutAndCounted) {
    Checker checker(book());
    std::string text(kMaxFieldBytes, ' ');
    text.replace(0, 7, "leather");
    Listing listing = listing_of(text);
    listing.fields.push_back({"material", "cotton"});
    EXPECT_EQ(checker.check(listing).mentions.size(), 2U);
    EXPECT_EQ(checker.check(listing).fields_too_long, 0U);
    text += ' ';
    listing.fields[0].text = text;
    const CheckResult& result = checker.check(listing);
    EXPECT_EQ(result.fields_too_long, 1U);
    ASSERT_EQ(result.mentions.size(), 1U);
    EXPECT_EQ(result.mentions[0].field, 1U);
}

// A result depends on the listing alone, not on the one before it.
TEST(Checker, ForgetsTheListingBefore) {
    const std::vector<std::string_view> texts = {
        "Tote in PU leather.",           "Leather belt",   "",
        "Lining: 60% cotton, 60% linen", "Made in Italy.", "Vegan leather boots, no PVC."};
    Checker kept(book());
    for (const std::string_view before : texts) {
        for (const std::string_view text : texts) {
            Checker fresh(book());
            kept.check(listing_of(before));
            const Listing listing = listing_of(text);
            EXPECT_EQ(support::dump_claims(book(), listing, kept.check(listing)),
                      support::dump_claims(book(), listing, fresh.check(listing)));
        }
    }
}

// ---- memory ----------------------------------------------------------------------------------------------------

TEST(Checker, AllocatesNothingOnceItsMemoryHasGrown) {
    const auto corpus = scoring::read_labelled_file(GRAINSIDE_CORPUS_FOLDER "/open_a.jsonl");
    ASSERT_TRUE(corpus);
    std::vector<Listing> listings;
    for (const scoring::LabelledListing& labelled : corpus.value()) listings.push_back(labelled.listing());
    ASSERT_GT(listings.size(), 50U);
    Checker checker(book());
    std::size_t findings = 0;
    for (const Listing& listing : listings) findings += checker.check(listing).findings.size();
    EXPECT_GT(findings, 0U);
    const auto before = support::allocations();
    for (int round = 0; round < 3; ++round) {
        for (const Listing& listing : listings) checker.check(listing);
    }
    EXPECT_EQ(support::allocations().count - before.count, 0U) << "in 3 rounds over " << listings.size() << " listings";
    const auto counted = support::allocations();
    ::operator delete(::operator new(1));
    EXPECT_EQ(support::allocations().count - counted.count, 1U) << "the count counts nothing";
}

// One false alarm costs more trust than one miss: what only some markets forbid is not said where no market is known.
TEST(Checker, WithoutAMarketGivesNoRuleOfAMarket) {
    Checker anywhere(book());
    std::size_t tried = 0;
    for (const RuleInfo& rule : book().rules()) {
        if (rule.markets.empty()) continue;
        const CheckResult& result = anywhere.check(grainside::listing_of(rule.flags.front()));
        for (const Finding& finding : result.findings) EXPECT_NE(book().rules()[finding.rule].id, rule.id);
        Checker there(book(), {.markets = {rule.markets.front()}, .on = {}});
        EXPECT_FALSE(there.check(grainside::listing_of(rule.flags.front())).findings.empty()) << rule.id;
        ++tried;
    }
    EXPECT_GT(tried, 0U);
}

}  // namespace
}  // namespace grainside
