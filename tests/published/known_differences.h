// Rows on which the checker and a source differ today, each with the reason: one list for all files.
//
// The test of such a row fails as soon as they agree, so that whoever mends it takes the row off the list.
#ifndef GRAINSIDE_TESTS_PUBLISHED_KNOWN_DIFFERENCES_H
#define GRAINSIDE_TESTS_PUBLISHED_KNOWN_DIFFERENCES_H

#include <span>
#include <string_view>

namespace grainside::published {

struct KnownDifference {
    std::string_view row;  // Row::name
    std::string_view why;
};

std::span<const KnownDifference> known_differences_of_pattern_examples();
std::span<const KnownDifference> known_differences_of_leather_words();
std::span<const KnownDifference> known_differences_of_worked_examples();

}  // namespace grainside::published

#endif  // GRAINSIDE_TESTS_PUBLISHED_KNOWN_DIFFERENCES_H
