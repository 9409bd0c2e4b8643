// Alloys and other materials of known composition or density (rules/EVIDENCE.md, section 2).
#ifndef GRAINSIDE_EVIDENCE_LOAD_ALLOYS_H
#define GRAINSIDE_EVIDENCE_LOAD_ALLOYS_H

#include "document/faults.h"
#include "evidence/evidence_data.h"
#include "rules/book_data.h"

namespace grainside::evidence {

// A book without alloys.yaml has none. Faults: "unknown-key", "missing-key", "wrong-type", "bad-id", "duplicate-alloy",
// "unknown-element", "unknown-source", "bad-range" (no range, upside down, a unit of another dimension), "bad-window"
// (no composition fits it, the balance is listed too, or a tolerance widens nothing).
void load_alloys(const rules::BookData& book, EvidenceData& data, document::Faults& faults);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_LOAD_ALLOYS_H
