// Rows on which the checker and a source differ today, each with the reason: one list for all of them.
//
// The test of such a row fails as soon as they agree, so that whoever mends it takes the row off the list.
#ifndef GRAINSIDE_TESTS_PUBLISHED_KNOWN_DIFFERENCES_H
#define GRAINSIDE_TESTS_PUBLISHED_KNOWN_DIFFERENCES_H

#include <span>
#include <string_view>
#include <vector>

#include "published_rows.h"

namespace grainside::published {

struct KnownDifference {
    std::string_view row;  // Row::name
    std::string_view why;
};

std::span<const KnownDifference> known_differences_of_pattern_examples();
std::span<const KnownDifference> known_differences_of_leather_words();

// Checks one row: agreement, or, for a row in `known`, that it still differs. Fails the running test otherwise.
void expect_agreement(const RuleBook& book, const Row& row, std::span<const KnownDifference> known);

// Fails the running test where `known` names a row that is not in `rows`, or names one twice.
void expect_all_known(const std::vector<Row>& rows, std::span<const KnownDifference> known);

// The default book and the rows of one file of corpus/published. What cannot be read fails the running test and leaves
// the result empty; `rows_of` is called before any test runs and leaves that to `expect_count`.
const RuleBook* built_in_book();
std::vector<Row> rows_of(const std::string& file);
void expect_count(const std::string& file, std::size_t count);

}  // namespace grainside::published

#endif  // GRAINSIDE_TESTS_PUBLISHED_KNOWN_DIFFERENCES_H
