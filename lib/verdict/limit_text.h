// Limits in words.
#ifndef GRAINSIDE_VERDICT_LIMIT_TEXT_H
#define GRAINSIDE_VERDICT_LIMIT_TEXT_H

#include <string>
#include <vector>

#include "verdict/claim_evidence.h"
#include "verdict/limit_decision.h"

namespace grainside::verdict {

// "0.210 mm" with its uncertainty; of an absence "brass (99 %)".
std::string value_text(const Bench& bench, const LimitDecision& decision);

// What was read and how the limit stands to it, and why the limit is there: one or two sentences.
std::string limit_sentence(const Bench& bench, const LimitDecision& decision);

// What a reading of the limit, or more of them, could change about `grade`; nothing where it could change nothing.
std::vector<std::string> limit_changes(const LimitDecision& decision, Grade grade);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_LIMIT_TEXT_H
