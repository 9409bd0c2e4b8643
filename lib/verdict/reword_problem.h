// What a rewording has to deal with: the findings or verdicts of a listing, in one form.
#ifndef GRAINSIDE_VERDICT_REWORD_PROBLEM_H
#define GRAINSIDE_VERDICT_REWORD_PROBLEM_H

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "grainside/checker.h"
#include "grainside/judge.h"
#include "grainside/listing.h"
#include "grainside/reword.h"

namespace grainside::verdict {

struct WordSpan {
    std::uint32_t field = 0;
    std::uint32_t start = 0;
    std::uint32_t end = 0;
};

struct Problem {
    WordSpan at;
    Grade grade = Grade::vague;
    std::uint32_t rule = kNoRule;
    std::string because;
    std::string remedy;
    // The best first; an empty one leaves the words out. None: nothing that would be true is known.
    std::vector<std::string> wordings;
    std::string fixed;  // why nothing can be written there whatever the wording; empty = it can
    bool before_noun = false;
    bool before_stuff = false;  // right behind stands a material, and no other noun behind it
    bool is_name = false;
    const Claim* behind = nullptr;    // what the same phrase names right behind; of the checker's last result
    std::optional<WordSpan> against;  // the statement that it disagrees with
};

// By the words alone. `result` is the checker's last, of `listing`.
std::vector<Problem> problems_of(const RuleBook& book, const Checker& checker, const Listing& listing,
                                 const CheckResult& result, const RewordOptions& options);
// With the readings of a dossier. What passes, and what the readings do not decide, is no problem of the words.
std::vector<Problem> problems_of(const RuleBook& book, const Judgement& judgement, const Listing& listing,
                                 const RewordOptions& options);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_REWORD_PROBLEM_H
