// Which conditions of rules the proof texts have seen true and false.
#ifndef GRAINSIDE_VERDICT_EXAMINATION_CONDITION_COVERAGE_H
#define GRAINSIDE_VERDICT_EXAMINATION_CONDITION_COVERAGE_H

#include <cstdint>
#include <span>
#include <vector>

#include "rules/book_data.h"
#include "verdict/examination/examiner.h"
#include "verdict/examination/proof_texts.h"

namespace grainside::verdict {

// The clauses of rule `rule` of the book that are its own; `model` is the index of the rule that it is like, or
// kNoModel. examiner.h says what counts as seen.
std::vector<ClauseCoverage> coverage_of_rule(const rules::BookData& book, std::uint32_t rule, std::uint32_t model,
                                             std::span<const ReadText> texts);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_EXAMINATION_CONDITION_COVERAGE_H
