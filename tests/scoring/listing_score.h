// Scoring one listing: what was found against what is labelled.
#ifndef GRAINSIDE_TESTS_SCORING_LISTING_SCORE_H
#define GRAINSIDE_TESTS_SCORING_LISTING_SCORE_H

#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/checker.h"
#include "labelled_file.h"
#include "score_table.h"

namespace grainside::scoring {

// The names that a rule book gives, as functions, so that scoring needs no book to be tested.
struct BookNames {
    std::function<std::string_view(ConceptId)> concept_name;
    std::function<std::string_view(std::uint32_t)> rule_name;
};

// One thing that is not as labelled.
struct Remark {
    std::string id;
    std::string field;
    std::string words;
    std::string what;
};

// The markets whose findings are asked of `listing`: those of the options, else the one that it names itself. This is
// what Checker does with them.
std::vector<std::string> markets_of(const LabelledListing& listing, std::span<const std::string> asked);

// 'whole' and the main outside part (upper, body or strap, the first of these that is labelled) count as the same.
bool same_part(const LabelledListing& listing, Part labelled, Part found);

// Adds to `scores` and appends a remark for each miss, false alarm, wrong part or concept and failed trap.
void score_listing(const LabelledListing& listing, const CheckResult& result, std::span<const std::string> markets,
                   const BookNames& names, Scores& scores, std::vector<Remark>& remarks);

}  // namespace grainside::scoring

#endif  // GRAINSIDE_TESTS_SCORING_LISTING_SCORE_H
