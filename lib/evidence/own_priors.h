// What a dossier knows beforehand: its own priors, and what a laboratory confirmed.
#ifndef GRAINSIDE_EVIDENCE_OWN_PRIORS_H
#define GRAINSIDE_EVIDENCE_OWN_PRIORS_H

#include "evidence/dossier_data.h"
#include "evidence/entry_reader.h"

namespace grainside::evidence {

// `priors:` maps frames to candidates and their percentages. What those leave of 100 the other candidates of the frame
// share, in the proportion of the book's priors; they must leave something, unless every candidate is named. Faults:
// "wrong-type", "unknown-frame", "unknown-candidate", "bad-prior" (not above 0), "prior-sum".
void read_own_priors(const EntryReader& reader, document::Node node, const EvidenceData& data, DossierData& dossier);

// `confirmed:` maps parts to frames and the candidate that was found. Faults: "wrong-type", "unknown-part",
// "unknown-frame", "unknown-candidate", "wrong-part" (the frame does not ask of it).
void read_confirmed(const EntryReader& reader, document::Node node, const EvidenceData& data, DossierData& dossier);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_OWN_PRIORS_H
