// What is counted of one flagged wording, under the rule that flags it. Not thread-safe.
#ifndef GRAINSIDE_SURVEY_FLAGGED_WORDS_H
#define GRAINSIDE_SURVEY_FLAGGED_WORDS_H

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>

#include "grainside/survey.h"
#include "survey/distinct_count.h"
#include "survey/natural_order.h"

namespace grainside::survey {

inline constexpr std::size_t kSellersOfWording = 32;  // exact up to here

// Where a wording stands; the first in the natural order of ids is shown.
struct WordingPlace {
    std::string listing;
    std::string field;
    std::string say_instead;

    bool is_before(const WordingPlace& other) const {
        return is_before(other.listing, other.field) ||
               (listing == other.listing && field == other.field && say_instead < other.say_instead);
    }
    // The same without what to say instead.
    bool is_before(std::string_view other_listing, std::string_view other_field) const {
        return listing != other_listing ? std::is_lt(natural_order(listing, other_listing)) : field < other_field;
    }
};

struct FlaggedWords {
    std::uint32_t rule = 0;
    Grade grade = Grade::vague;
    std::string spelling;  // the one with the greatest bytes
    std::uint64_t listings = 0;
    DistinctCount sellers{kSellersOfWording};
    WordingPlace place;
    std::uint64_t last_listing = 0;  // of this tally: a listing counts once

    void merge(FlaggedWords&& other) {
        if (other.spelling > spelling) spelling = std::move(other.spelling);
        if (other.grade < grade) grade = other.grade;
        listings += other.listings;
        sellers.merge(other.sellers);
        if (other.place.is_before(place)) place = std::move(other.place);
    }
};

}  // namespace grainside::survey

#endif  // GRAINSIDE_SURVEY_FLAGGED_WORDS_H
