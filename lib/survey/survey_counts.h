// The counts of a survey. Not thread-safe.
#ifndef GRAINSIDE_SURVEY_SURVEY_COUNTS_H
#define GRAINSIDE_SURVEY_SURVEY_COUNTS_H

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "grainside/survey.h"
#include "rules/book_data.h"
#include "survey/flagged_words.h"
#include "survey/group_counts.h"
#include "survey/kept_by_hash.h"
#include "survey/name_keys.h"
#include "survey/worst_listings.h"

namespace grainside {

namespace survey {

struct PartCounts {
    std::uint64_t claims = 0;
    std::array<std::uint64_t, 6> by_worst{};
};

}  // namespace survey

inline namespace v0 {

struct SurveyTally::Counts {
    Counts(const RuleBook& rule_book, SurveyOptions asked)
        : book(rule_book),
          options(std::move(asked)),
          categories(book.data().vocabulary.categories.size()),
          worst(std::min(options.top, kMostListed)) {}

    void add(const Listing& listing, const CheckResult& result, const Checker& checker);
    void merge(Counts&& other);
    Survey survey() const;

    const RuleBook& book;
    SurveyOptions options;
    survey::GroupCounts all;
    survey::KeptByHash<survey::GroupCounts> sellers{kMostSellers};  // by the key of their name
    survey::GroupCounts no_seller;                                  // of listings that state none
    survey::KeptByHash<survey::GroupCounts> markets{kMostMarkets};
    survey::KeptByHash<survey::FlaggedWords> wordings{kMostWordings};
    std::vector<survey::GroupCounts> categories;  // by the number of the book
    std::array<survey::PartCounts, kPartCount> parts{};
    survey::WorstListings worst;

    void add_seller(const Listing& listing, const survey::ListingCounts& counts);
    void add_markets(const Listing& listing, const survey::ListingCounts& counts);
    void add_parts(const CheckResult& result);
    void add_wordings(const Listing& listing, const CheckResult& result, const Checker& checker);
    void add_worst(const Listing& listing, const CheckResult& result, const survey::ListingCounts& counts);

    void list_sellers(Survey& survey) const;
    void list_parts(Survey& survey) const;
    void list_rules(Survey& survey) const;
    void list_wordings(Survey& survey) const;

    // Working memory.
    std::uint64_t listing_number = 0;  // from 1; beyond those of every tally merged into this one
    survey::NameKeys keys;
    std::string seller_key;
    std::string wording_key;
    std::vector<std::string> region;
    std::vector<std::uint32_t> rules_here;
    std::vector<std::uint64_t> wordings_here;
    std::vector<Grade> grade_of_mention;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_SURVEY_SURVEY_COUNTS_H
