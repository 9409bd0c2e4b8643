// The kinds of remarks, a function each.
#ifndef GRAINSIDE_VERDICT_EXAMINATION_FINDINGS_H
#define GRAINSIDE_VERDICT_EXAMINATION_FINDINGS_H

#include <cstdint>
#include <span>
#include <vector>

#include "rules/book_data.h"
#include "verdict/examination/remarks.h"
#include "verdict/examination/rule_tally.h"

namespace grainside::verdict {

// Errors "dead-rule" and "dead-condition": conditions that contradict themselves, or that ask for concepts only of
// which the grammar makes no claim. Unknown markets and days out of order are refused when the book is loaded. Returns,
// by rule, which are dead.
std::vector<char> find_dead_conditions(const rules::BookData& book, std::span<const std::uint32_t> models,
                                       Remarks& remarks);

// Errors "silent-rule" (not of those that are `dead` anyway) and "shadowed-rule", notes "overruled-rule".
void find_shadowed_rules(const rules::BookData& book, std::span<const std::uint32_t> models, const RuleTally& tally,
                         std::span<const char> dead, Remarks& remarks);

// Notes "unasked-concepts": what terms stand for and neither rules nor the evidence half ask about.
void find_unasked_concepts(const rules::BookData& book, Remarks& remarks);

// Notes "uncited-source".
void find_uncited_sources(const rules::BookData& book, Remarks& remarks);

// Errors "example-twice", notes "examples-alike".
void find_alike_examples(const rules::BookData& book, std::span<const std::uint32_t> models, Remarks& remarks);

// Notes "no-date", "from-memory", "same-title", "same-because".
void find_unusual_entries(const rules::BookData& book, std::span<const std::uint32_t> models, Remarks& remarks);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_EXAMINATION_FINDINGS_H
