// The judging policy of judging.yaml (rules/EVIDENCE.md, section 5).
#ifndef GRAINSIDE_EVIDENCE_LOAD_JUDGING_H
#define GRAINSIDE_EVIDENCE_LOAD_JUDGING_H

#include "document/faults.h"
#include "evidence/evidence_data.h"
#include "rules/book_data.h"

namespace grainside::evidence {

// Every key must stand: a policy that is half the file's and half the library's is nobody's. Faults: "missing-file",
// "missing-key", "unknown-key", "wrong-type", "out-of-range".
void load_judging(const rules::BookData& book, EvidenceData& data, document::Faults& faults);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_LOAD_JUDGING_H
