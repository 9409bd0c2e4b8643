// One frame's table of a method: for each material the share of each outcome, spread over the frame's candidates.
#ifndef GRAINSIDE_EVIDENCE_OUTCOME_TABLES_H
#define GRAINSIDE_EVIDENCE_OUTCOME_TABLES_H

#include <optional>

#include "evidence/entry_reader.h"
#include "evidence/evidence_data.h"

namespace grainside::evidence {

// `node` is the mapping of materials to rows that stands under the frame's id. A candidate takes the row with its own
// id; else that of the nearest concept above it (breadth first, the first written of equally near ones); else `others`.
// Faults: "wrong-type", "unknown-material", "unknown-outcome", "out-of-range", "row-sum" (not 100), "missing-row",
// "unused-row". Nothing where a fault was reported. REQUIRES: `frame` is an index of `data.frames`; `method` has its
// outcomes.
std::optional<OutcomeTable> read_outcome_table(const EntryReader& reader, document::Node node, std::size_t frame,
                                               const Method& method, const EvidenceData& data);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_OUTCOME_TABLES_H
