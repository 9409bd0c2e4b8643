// The tests of methods/*.yaml (rules/EVIDENCE.md, section 3).
#ifndef GRAINSIDE_EVIDENCE_LOAD_METHODS_H
#define GRAINSIDE_EVIDENCE_LOAD_METHODS_H

#include "document/faults.h"
#include "evidence/evidence_data.h"
#include "rules/book_data.h"

namespace grainside::evidence {

// Alloys and candidates are loaded already. A book without methods/ has none. Faults: those of outcome_tables.h, and
// "unknown-key", "missing-key", "wrong-type", "bad-id", "duplicate-method", "unknown-part", "unknown-harm",
// "unknown-who", "unknown-worn", "unknown-computes", "unknown-likelihood_by", "unknown-frame", "unknown-source",
// "unknown-unit", "wrong-dimension" (a quantity that another method reads otherwise, or a formula needs otherwise),
// "missing-quantity" (that `likelihood_by` needs), "missing-alloy", "nothing-to-see" (neither outcomes
// nor quantities), "impossible-outcome" (in no row), "no-common-part" (a table for a frame that asks of other parts),
// "out-of-range".
void load_methods(const rules::BookData& book, EvidenceData& data, document::Faults& faults);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_LOAD_METHODS_H
