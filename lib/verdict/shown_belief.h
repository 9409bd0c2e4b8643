// Beliefs in words.
#ifndef GRAINSIDE_VERDICT_SHOWN_BELIEF_H
#define GRAINSIDE_VERDICT_SHOWN_BELIEF_H

#include <string>

#include "verdict/claim_evidence.h"

namespace grainside::verdict {

// "polyurethane-coated fabric (97 %), microfibre (2 %)": the likeliest candidates, at most three.
std::string shown(const Bench& bench, const identify::Belief& belief);

// The belief that speaks loudest against the claim: what the part is, where the claim asks more closely than that.
// nullptr where nothing was read.
const identify::Belief* loudest_against(const ClaimEvidence& evidence);

// The last view with a reading: what is known most closely. nullptr where nothing was read.
const identify::Belief* closest(const ClaimEvidence& evidence);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_SHOWN_BELIEF_H
