// One reading of a dossier: what a method gave on a part.
#ifndef GRAINSIDE_EVIDENCE_READING_READER_H
#define GRAINSIDE_EVIDENCE_READING_READER_H

#include <optional>

#include "evidence/day_check.h"
#include "evidence/dossier_data.h"
#include "evidence/entry_reader.h"

namespace grainside::evidence {

// Reads the mapping `node`, a reading on `part` (nothing where the dossier names a part that there is not: then every
// method passes), with what the method computes from it. Where a fault was reported the
// reading may lack what was faulty, or its method (kNone).
// Faults: those of read_measured in quantity_reader.h, share_list.h, computed_quantities.h and DayCheck, and
// "missing-key" (`method`), "unknown-key", "wrong-type", "unknown-method", "unknown-outcome", "unknown-element",
// "unknown-concept", "wrong-part" (the method is not for it), "unread-quantity" (one that only other methods read),
// "empty-reading" (neither outcome nor quantity), "out-of-range" (a colour), "outcome-against-figures" (the numbers
// surely are not what the outcome asks for). Warnings: "unusual-value", "wide-uncertainty" (by Method::usual).
Reading read_reading(const EntryReader& reader, document::Node node, std::optional<Part> part, const EvidenceData& data,
                     const DayCheck& days);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_READING_READER_H
