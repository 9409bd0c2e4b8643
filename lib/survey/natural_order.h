// The order of names in which 'feed.jsonl:2' stands before 'feed.jsonl:10'. Thread-safe.
#ifndef GRAINSIDE_SURVEY_NATURAL_ORDER_H
#define GRAINSIDE_SURVEY_NATURAL_ORDER_H

#include <compare>
#include <string_view>

namespace grainside::survey {

// Digits that stand side by side count as one number of any length, all else by its bytes; names that are alike in this
// way ('b-07', 'b-7') are ordered by their bytes. A total order; linear in the shorter name.
std::strong_ordering natural_order(std::string_view a, std::string_view b);

}  // namespace grainside::survey

#endif  // GRAINSIDE_SURVEY_NATURAL_ORDER_H
