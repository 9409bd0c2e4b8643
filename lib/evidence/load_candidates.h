// Frames and their candidates (rules/EVIDENCE.md, section 1).
#ifndef GRAINSIDE_EVIDENCE_LOAD_CANDIDATES_H
#define GRAINSIDE_EVIDENCE_LOAD_CANDIDATES_H

#include "document/faults.h"
#include "evidence/evidence_data.h"
#include "rules/book_data.h"

namespace grainside::evidence {

// The alloys are loaded already. Faults: "missing-file", "missing-key", "unknown-key", "wrong-type", "bad-id",
// "duplicate-frame", "duplicate-candidate", "unknown-part", "unknown-concept", "unknown-frame", "unknown-alloy",
// "too-few-candidates", "bad-prior", "both-ways" (a concept that is borne out and ruled out or left open), "cycle" (of
// frames), "never-within" (`of` has no candidate that is `within`).
void load_candidates(const rules::BookData& book, EvidenceData& data, document::Faults& faults);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_LOAD_CANDIDATES_H
