// A published verdict on a wording, and what the checker says to a wording of the same kind.
//
// corpus/published/worked_examples.jsonl has them: every example or rule text of the fact base on which a source gives
// a verdict, put into words of our own. corpus/published/README.md has the form.
#ifndef GRAINSIDE_TESTS_PUBLISHED_WORKED_EXAMPLE_H
#define GRAINSIDE_TESTS_PUBLISHED_WORKED_EXAMPLE_H

#include <iosfwd>
#include <string>
#include <vector>

#include "grainside/finding.h"
#include "grainside/result.h"
#include "grainside/rule_book.h"

namespace grainside::published {

struct WorkedExample {
    std::string name;     // letters, digits and underscores: it names the test
    std::string fact;     // its entry of the fact base
    std::string cite;     // the clause, and whether it was seen or is from memory
    std::string verdict;  // of the source, in its word: deceptive, not-deceptive, needs-qualification, depends
    std::string why;      // why the grade follows from it, or why words cannot show it
    std::string market;   // empty: only rules that hold everywhere
    std::string on;       // YYYY-MM-DD
    std::string title, category, material, text;
    std::string quote;    // the words of `text` that are judged
    std::string on_file;  // what a document on file shows; empty: there is none
    Grade grade = Grade::consistent;
    bool or_worse = false;   // the source's reason does not stand in the words: asking for proof is the least
    bool applicable = true;  // no: a listing's words can by no means show it
};

// For the messages of GoogleTest.
void PrintTo(const WorkedExample& example, std::ostream* out);

// Issues (all of the file): "cannot-open", "json-syntax", "row".
Result<std::vector<WorkedExample>> read_worked_examples();

struct Agreement {
    bool agreed = false;
    std::string ours;  // "misleading (recyclable-unqualified-us)"; "nothing"
};

// They agree on `consistent` if the text gets no finding at all; on another grade if the worst finding that overlaps
// the quote has that grade or, with `or_worse`, at least that grade.
Agreement compare(const RuleBook& book, const WorkedExample& example);

}  // namespace grainside::published

#endif  // GRAINSIDE_TESTS_PUBLISHED_WORKED_EXAMPLE_H
