// The usual costs of costs/*.yaml (rules/EVIDENCE.md, section 8).
#ifndef GRAINSIDE_EVIDENCE_LOAD_COSTS_H
#define GRAINSIDE_EVIDENCE_LOAD_COSTS_H

#include "document/faults.h"
#include "evidence/evidence_data.h"
#include "rules/book_data.h"

namespace grainside::evidence {

// A book without costs/ has none: then no range is usual, and any three capitals are a currency. Faults: those of
// read_cost_value in cost_value.h, and "unknown-key", "missing-key", "wrong-type", "bad-id", "bad-range" (no range),
// "bad-bracket" (ends that do not rise, a last one that is not open, two currencies), "bad-currency" (a code that is no
// three capitals), "duplicate-currency", "duplicate-usual", "duplicate-duty", "duplicate-customs", "unknown-input",
// "unknown-group", "unknown-base", "unknown-market", "unknown-category", "unknown-concept", "unknown-source",
// "out-of-range".
void load_costs(const rules::BookData& book, EvidenceData& data, document::Faults& faults);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_LOAD_COSTS_H
