// What the readings say about one claim: the frames of its part, and the limits that ask for it.
#ifndef GRAINSIDE_VERDICT_CLAIM_EVIDENCE_H
#define GRAINSIDE_VERDICT_CLAIM_EVIDENCE_H

#include <cstddef>
#include <cstdint>
#include <vector>

#include "grainside/claim.h"
#include "grainside/finding.h"
#include "grainside/judge.h"
#include "identify/part_beliefs.h"
#include "identify/question.h"
#include "verdict/limit_decision.h"

namespace grainside::verdict {

// A dossier under judgement; all references outlive it.
struct Bench {
    const vocabulary::ConceptTree& tree;
    const evidence::EvidenceData& data;
    const evidence::DossierData& dossier;
    std::vector<identify::PartEvidence> parts;   // of the dossier, then those that only claims name
    std::vector<const evidence::Limit*> limits;  // in force in the markets asked, on the day, for this kind of product
    Part main_part = Part::body;
    DecisionPolicy policy;

    const identify::PartEvidence* part(Part which) const noexcept;
};

// A reading of a part, and the grade that would stand without it.
struct Carrier {
    std::uint32_t reading = 0;
    Grade without = Grade::inconclusive;
};

struct ClaimEvidence {
    const identify::PartEvidence* part = nullptr;  // whose frames were asked; nullptr: none was
    std::vector<identify::FrameView> views;
    identify::Truth truth;  // of the claim as it stands, denial included
    bool asked = false;     // a frame or a limit could tell
    bool read = false;      // and a reading speaks of it
    bool contradictory = false;
    bool stands_alone = true;               // by the frames: no single reading carries it
    std::vector<Carrier> carriers;          // readings of `part` without which the frames would grade otherwise
    std::vector<WeighedEvidence> readings;  // at least a deciban, heaviest first
    std::vector<LimitDecision> limits;
    Grade frames_grade = Grade::unsupported;  // by the frames alone
    Grade grade = Grade::unsupported;
};

ClaimEvidence evidence_on(const Bench& bench, const Claim& claim);

// The claim as something that tests may settle.
identify::Question question_of(const Bench& bench, const Claim& claim, const ClaimEvidence& evidence);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_CLAIM_EVIDENCE_H
