// Surveys: of many listings, how often words are flagged, by seller, part, category, market, rule and grade, with the
// limits that a sample leaves; the worst listings and the commonest wordings.
//
//     const std::string_view feed =
//         "{\"sku\":\"1\",\"name\":\"Genuine PU leather tote\",\"brand\":\"Harrow & Pine\"}\n"
//         "{\"sku\":\"2\",\"name\":\"Cotton tote\",\"brand\":\"HARROW & PINE\"}\n"
//         "{\"sku\":\"3\",\"name\":\"Cork belt\",\"brand\":\"Tidewell Slow Goods\"}\n";
//     auto reader = grainside::ListingReader::from_memory("feed.jsonl", feed, {});
//     grainside::Checker checker(book);
//     grainside::SurveyTally tally(book);
//     grainside::Listing listing;
//     std::vector<grainside::Issue> issues;
//     while (reader.next(listing, issues)) tally.add(listing, checker.check(listing), checker);
//     grainside::SurveyTally of_another_thread(book);
//     tally.merge(std::move(of_another_thread));
//     const grainside::Survey survey = tally.survey();
//     const auto misleading = static_cast<std::size_t>(grainside::Grade::misleading);
//     for (const grainside::SurveyGroup& seller : survey.sellers) {
//         const grainside::SurveyRate& rate = seller.rates[misleading];
//         std::cout << seller.name << ": " << rate.count << " of " << rate.of << ", " << std::round(100 * rate.low)
//                   << " to " << std::round(100 * rate.high) << " %\n";
//     }
//     // prints: HARROW & PINE: 1 of 2, 9 to 91 %
//     // prints: Tidewell Slow Goods: 0 of 1, 0 to 79 %
//
// A tally is not thread-safe: keep one a thread and `merge` them. Whatever way the listings are dealt out to tallies
// and in whatever order they come or are merged, the survey is the same. Memory stays bounded: beyond kMostSellers and
// kMostWordings, those are kept whose texts have the smallest hashes (XXH3), with exact counts, and the survey says how
// much is not told apart. Rates are of wording: nothing here speaks of products or of intent.
//
// A seller is known by the name that its listings state. Capitals, accents, spaces, hyphens, invisible characters and
// the forms in which Unicode writes the same letter make no other seller: 'HARROW &  PINE' is 'Harrow & Pine'. Words
// and marks do: 'Harrow and Pine' and 'Harrow & Pine Ltd.' count apart, because a company's form or another word can be
// another company's; whoever knows that they are one gives them one name in the feed.
#ifndef GRAINSIDE_SURVEY_H
#define GRAINSIDE_SURVEY_H

#include <array>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "grainside/checker.h"

namespace grainside {
inline namespace v0 {

inline constexpr std::size_t kMostSellers = 50'000;    // told apart
inline constexpr std::size_t kMostWordings = 100'000;  // told apart, each with the rule that flags it
inline constexpr std::size_t kMostMarkets = 1'000;     // told apart
inline constexpr std::size_t kMostListed = 10'000;     // SurveyOptions::top at most
// Of a seller's name, a listing's id or flagged words this much is kept and compared, cut on a character's border.
inline constexpr std::size_t kMostNameBytes = 256;

struct SurveyOptions {
    // Of the limits of a rate, both together; 0 < confidence < 1.
    double confidence = 0.95;
    // Half the width that the limits of a rate should have, for the advice on how many more listings to read; > 0.
    double within = 0.1;
    // Sellers and categories are compared by the rate of listings with a finding of this grade or a worse one.
    // REQUIRES: not Grade::consistent.
    Grade at = Grade::misleading;
    // How many of the worst listings and of the commonest wordings are listed.
    std::size_t top = 10;
    // The markets that the listings were checked for, as in CheckOptions; empty: those that each names.
    std::vector<std::string> markets = {};
};

inline constexpr std::size_t kSurveyedGrades = 5;  // contradicted to vague

// `count` of `of` as a share, 0 to 1, with Wilson's limits (1927; lib/measure/proportion.h). Of nothing, the rate is 0
// and the limits 0 and 1.
struct SurveyRate {
    std::uint64_t count = 0;
    std::uint64_t of = 0;
    double rate = 0;
    double low = 0;
    double high = 1;
};

// How many different ones; beyond 512 (for sellers of a wording 32) worked out from the smallest hashes.
struct SurveyDistinct {
    std::uint64_t count = 0;
    bool estimated = false;
};

// How a group's rate lies to that of all other listings together, by Newcombe's limits of their difference: `chance`
// where those hold 0.
enum class SurveyStanding : std::uint8_t { not_compared, chance, above, below };

struct SurveyRuleCount {
    std::uint32_t rule = 0;  // index into RuleBook::rules()
    SurveyRate listings;     // in which it flags something
};

struct SurveyGroup {
    std::string name;  // as written by a stranger; "" = not stated, not known
    std::uint64_t listings = 0;
    std::uint64_t claims = 0;
    std::uint64_t findings = 0;
    SurveyDistinct wordings;                  // different ones with a finding of SurveyOptions::at or a worse grade
    std::array<std::uint64_t, 6> by_worst{};  // listings by the grade of their worst finding; consistent: no finding
    std::array<SurveyRate, kSurveyedGrades> rates;  // listings with a finding of the grade or a worse one
    SurveyStanding standing = SurveyStanding::not_compared;
    double difference = 0;  // to the rate of all others
    double difference_low = -1;
    double difference_high = 1;
    // How many more listings it would take to know the rate to SurveyOptions::within, if it stays what it is.
    std::uint64_t further = 0;
    std::vector<SurveyRuleCount> rules;  // of a seller, the most frequent first
};

// Claims about a part, and how many carry a finding of the grade or a worse one. A finding on praise stands on no
// claim.
struct SurveyPart {
    Part part = Part::whole;
    std::uint64_t claims = 0;
    std::array<SurveyRate, kSurveyedGrades> rates;
};

struct SurveyRule {
    SurveyRuleCount count;
    std::uint64_t sellers = 0;  // of those told apart, with at least one such listing
};

struct SurveyListing {
    std::string id;
    std::string seller;
    Grade worst = Grade::vague;
    std::uint64_t findings = 0;
    std::array<std::uint64_t, 6> by_grade{};
    std::string words;       // of the first finding of the worst grade
    std::uint32_t rule = 0;  // and its rule
};

struct SurveyWording {
    std::string words;  // of its spellings the one with the greatest bytes, so rather in small letters
    std::uint32_t rule = 0;
    Grade grade = Grade::vague;
    std::uint64_t listings = 0;
    SurveyDistinct sellers;
    std::string listing;  // where it stands, of several the one with the smallest id
    std::string field;
    std::string say_instead;  // there; "" = the rule offers nothing that passes
};

struct Survey {
    SurveyOptions options;
    SurveyGroup all;
    // By the lower limit of the rate at SurveyOptions::at, highest first; then by rate, then by name.
    std::vector<SurveyGroup> sellers;
    std::vector<SurveyGroup> categories;  // names of the book
    std::vector<SurveyGroup> markets;     // a listing for several markets counts in each
    std::vector<SurveyPart> parts;        // those that claims speak of, likewise
    std::vector<SurveyRule> rules;        // those that flagged something, the most frequent first
    std::vector<SurveyListing> worst;     // by worst grade, then the number of findings, then id
    std::vector<SurveyWording> wordings;  // by listings, then words, then rule
    SurveyDistinct different_sellers;     // "" is none
    SurveyDistinct different_wordings;
    std::uint64_t listings_of_others = 0;  // of sellers that are not told apart
    // Errors while the listings were read, which whoever read them fills in; what they are about is not counted here.
    std::uint64_t reading_errors = 0;
};

class SurveyTally {
public:
    // The book must outlive the tally.
    explicit SurveyTally(const RuleBook& book, SurveyOptions options = {});
    SurveyTally(SurveyTally&&) noexcept;
    SurveyTally& operator=(SurveyTally&&) noexcept;
    ~SurveyTally();

    // REQUIRES: `result` is of the last check of `checker`, and of `listing`.
    void add(const Listing& listing, const CheckResult& result, const Checker& checker);
    // REQUIRES: made with the same book and options.
    void merge(SurveyTally&& other);

    std::uint64_t listings() const noexcept;
    Survey survey() const;

private:
    struct Counts;
    std::unique_ptr<Counts> counts_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_SURVEY_H
