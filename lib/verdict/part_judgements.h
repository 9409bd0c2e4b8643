// What each part of a dossier may be, in the words of the book.
#ifndef GRAINSIDE_VERDICT_PART_JUDGEMENTS_H
#define GRAINSIDE_VERDICT_PART_JUDGEMENTS_H

#include <string>
#include <vector>

#include "grainside/judge.h"
#include "verdict/claim_evidence.h"

namespace grainside::verdict {

// Parts with readings, in the dossier's order; of each the questions that a reading tells something about and that make
// sense: nobody asks which animal a cloth comes from.
std::vector<PartJudgement> parts_of(const Bench& bench);

// The methods on record, and those that verdicts name.
std::vector<NamedMethod> methods_of(const Bench& bench, const std::vector<Verdict>& verdicts);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_PART_JUDGEMENTS_H
