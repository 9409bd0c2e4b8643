// The quantities that a method works out from those it reads, through lib/measure.
#ifndef GRAINSIDE_EVIDENCE_COMPUTED_QUANTITIES_H
#define GRAINSIDE_EVIDENCE_COMPUTED_QUANTITIES_H

#include "evidence/dossier_data.h"
#include "evidence/entry_reader.h"

namespace grainside::evidence {

// Appends to `reading.quantities` what `method` computes; `entry` is the reading's mapping. Inputs count as
// independent. Faults: "missing-quantity" (an input of a density or a colour change), "floats" (a weight in water that
// is not below that in air), "out-of-range" (a temperature of the water outside 0 to 40 degrees), "coat-above-total"
// (by more than the expanded uncertainty, k = 2, of the difference), "not-computable" (an input for which the formula
// has no result). Warning: "missing-quantity" (a share of the coat without both thicknesses: the thickness itself still
// counts).
void compute_quantities(const EntryReader& reader, document::Node entry, const Method& method, Reading& reading);

// Whether a reading that has one of the quantities from which this is worked out must have them all; else what is there
// counts for itself.
bool needs_all_quantities(Computes what) noexcept;

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_COMPUTED_QUANTITIES_H
