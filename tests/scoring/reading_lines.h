// All that is read of a listing, as lines that a difference of two files shows: tests/scoring/README.md has their form.
//
// A line holds every member of a claim, so that nothing of it can change unseen. What only counts (phrases and
// sentences) is written as 'the same as so many lines above', so that a claim more does not change the lines behind it.
// Thread-safe.
#ifndef GRAINSIDE_TESTS_SCORING_READING_LINES_H
#define GRAINSIDE_TESTS_SCORING_READING_LINES_H

#include <cstddef>
#include <string>
#include <string_view>

#include "grainside/checker.h"
#include "grainside/listing.h"
#include "grainside/rule_book.h"

namespace grainside::scoring {

// `text` between quotes, on one line; of a text longer than `most` bytes whole characters, and '...' behind the quotes.
std::string quoted_line(std::string_view text, std::size_t most);

// What the listing is taken for: its kind of product, its main part, and how many of its fields were not read.
std::string listing_line(const RuleBook& book, const CheckResult& result);

// The claim or mention at `at` of `result`, which comes from a check of `listing`.
std::string claim_line(const RuleBook& book, const Listing& listing, const CheckResult& result, std::size_t at);

// The finding, without the rule that gives it, and what to write instead of its words as `checker` offers it. REQUIRES:
// `result` is the last that `checker` gave, of `listing`, and holds `finding`.
std::string finding_line(const RuleBook& book, const Listing& listing, const CheckResult& result,
                         const Finding& finding, const Checker& checker);

}  // namespace grainside::scoring

#endif  // GRAINSIDE_TESTS_SCORING_READING_LINES_H
