// The whole evidence half of a book, from the files that the book was made from.
#ifndef GRAINSIDE_EVIDENCE_LOAD_EVIDENCE_H
#define GRAINSIDE_EVIDENCE_LOAD_EVIDENCE_H

#include "document/faults.h"
#include "evidence/evidence_data.h"
#include "rules/book_data.h"

namespace grainside::evidence {

// Fills `data`; every fault of every file is among `faults`.
void load_evidence(const rules::BookData& book, EvidenceData& data, document::Faults& faults);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_LOAD_EVIDENCE_H
