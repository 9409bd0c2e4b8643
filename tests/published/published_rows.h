// Rows of corpus/published: a text, the words that a source judges, and the grade that follows.
//
// corpus/published/README.md has the form. A row's own verdict comes first, those of other markets and days after it.
#ifndef GRAINSIDE_TESTS_PUBLISHED_PUBLISHED_ROWS_H
#define GRAINSIDE_TESTS_PUBLISHED_PUBLISHED_ROWS_H

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

#include "grainside/claim.h"
#include "grainside/finding.h"
#include "grainside/result.h"
#include "grainside/rule_book.h"

namespace grainside::published {

struct Verdict {
    std::string market;  // empty: only rules that hold everywhere
    std::string on;      // YYYY-MM-DD; empty: every rule of the market whatever its dates
    Grade grade = Grade::consistent;
};

struct Row {
    std::string name;  // letters, digits and underscores: it names the test
    std::string text;  // checked as the description of a listing
    std::string quote;
    std::string language;
    std::string category;
    std::string
        cite;  // the clause, and whether it was seen or is from memory; empty where the row itself is the source
    std::optional<Part> part;
    std::vector<Verdict> verdicts;  // one at least
};

// For the messages of GoogleTest.
void PrintTo(const Row& row, std::ostream* out);

// Reads JSON Lines. Issues (all of the file): "cannot-open", "json-syntax", "row" with the line and what is wrong.
Result<std::vector<Row>> read_rows(const std::string& path);

// What the checker says otherwise than the row; empty where they agree. They agree on `consistent` if there is no
// finding at all, and on another grade if a finding of that grade overlaps the quote and every other finding has the
// same cause, so comes from the same rule.
std::string disagreement(const RuleBook& book, const Row& row);

}  // namespace grainside::published

#endif  // GRAINSIDE_TESTS_PUBLISHED_PUBLISHED_ROWS_H
