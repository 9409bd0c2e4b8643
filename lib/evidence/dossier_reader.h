// A dossier's tree read into its data (rules/EVIDENCE.md, section 6).
#ifndef GRAINSIDE_EVIDENCE_DOSSIER_READER_H
#define GRAINSIDE_EVIDENCE_DOSSIER_READER_H

#include <string>

#include "document/document.h"
#include "document/faults.h"
#include "evidence/dossier_data.h"
#include "evidence/evidence_data.h"
#include "rules/book_data.h"

namespace grainside::evidence {

// Fills `dossier`, whose file, id and folder stand already. `today` is YYYY-MM-DD or empty. Faults: those of
// reading_reader.h, listing_section.h, cost_reader.h and proof_reader.h, and "missing-key" (`sample`), "unknown-key",
// "wrong-type", "unknown-category", "unknown-condition", "negative", "out-of-range", "unknown-part", "unknown-frame",
// "unknown-candidate", "wrong-part" (confirmed by a frame that does not ask of the part), "bad-prior", "prior-sum",
// "too-many-readings". Warnings: "no-readings" (a part), "worn-though-new", and those of DayCheck and
// computed_quantities.h. REQUIRES: `today` is a day or empty.
void read_dossier(const document::Document& document, const rules::BookData& book, const EvidenceData& data,
                  const std::string& today, DossierData& dossier, document::Faults& faults);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_DOSSIER_READER_H
