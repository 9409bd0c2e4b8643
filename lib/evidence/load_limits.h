// The limits of limits/*.yaml (rules/EVIDENCE.md, section 4).
#ifndef GRAINSIDE_EVIDENCE_LOAD_LIMITS_H
#define GRAINSIDE_EVIDENCE_LOAD_LIMITS_H

#include "document/faults.h"
#include "evidence/evidence_data.h"
#include "rules/book_data.h"

namespace grainside::evidence {

// The methods are loaded already. A book without limits/ has none. Faults: those of read_bound in quantity_reader.h,
// and "unknown-key", "missing-key", "wrong-type", "bad-id", "duplicate-limit", "unknown-market", "bad-date",
// "unknown-category", "unknown-concept", "unknown-kind", "unknown-part", "unknown-source", "unknown-quantity" (no
// method reads or computes it), "unknown-side", "both-ways" (two kinds of ground in one limit, or bounds that both hold
// for one value), "bad-bound" (two lower or upper ends, or upside down), "out-of-range".
void load_limits(const rules::BookData& book, EvidenceData& data, document::Faults& faults);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_LOAD_LIMITS_H
