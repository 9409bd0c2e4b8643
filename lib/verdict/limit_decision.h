// One limit held against the readings of one part.
#ifndef GRAINSIDE_VERDICT_LIMIT_DECISION_H
#define GRAINSIDE_VERDICT_LIMIT_DECISION_H

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "evidence/dossier_data.h"
#include "evidence/evidence_data.h"
#include "grainside/claim.h"
#include "grainside/judge.h"
#include "identify/part_beliefs.h"
#include "measure/conformity.h"
#include "measure/measured.h"
#include "vocabulary/concept_tree.h"

namespace grainside::verdict {

struct LimitDecision {
    const evidence::Limit* limit = nullptr;
    Part part = Part::body;
    LimitVerdict says = LimitVerdict::unread;
    measure::Measured value;              // pooled; meaningless where unread
    double contradiction = 0;             // probability that the quantity lies where the limit contradicts, 0 to 1
    double support = 0;                   // the same for where it supports
    std::optional<int> repeats;           // readings in all that would settle an undecided one
    std::vector<std::uint32_t> readings;  // of the part, in written order
    bool worn_out = false;                // a contradiction that wear may have caused, so that it does not count
    bool partial = false;                 // of a sum some members were not read: it can be too high already, never low
    bool needs_unshown = false;           // it would support, but no reading shows that the part is what it needs
    bool between = false;                 // undecided, but near to no bound: short of what decides
    std::string contradicted_by;          // "above 0.15 mm"; empty where the limit never contradicts
    std::string supported_by;             // "at least 4", or "the stated 1.8 mm, give or take 0.2 mm"
    std::string near;                     // of these, the one that an undecided value is too near to

    // What matters of them for `says`: "above 0.15 mm" where that contradicts, "not above 0.15 mm" where it is met;
    // both where it is undecided.
    std::string bound() const;
};

struct DecisionPolicy {
    measure::DecisionRule rule = measure::DecisionRule::both_guarded;
    double guard = 1;  // expanded uncertainties
};

// The limit asks for claims like this one. Markets, days and categories are the caller's.
bool speaks_of(const vocabulary::ConceptTree& tree, const evidence::Limit& limit, const Claim& claim);

// `limit` has a quantity. `claim` gives the number that a `stated` limit is about; nothing where it states none in a
// fitting unit. Thread-safe.
std::optional<LimitDecision> decide_limit(const vocabulary::ConceptTree& tree, const evidence::EvidenceData& data,
                                          const evidence::Limit& limit, const Claim& claim,
                                          const identify::PartEvidence& part, bool sample_is_worn,
                                          const DecisionPolicy& policy);

// `limit` rules out what a part is made of (`no_part_is`). `contradiction` is the belief that it is one of these.
LimitDecision decide_absence(const vocabulary::ConceptTree& tree, const evidence::EvidenceData& data,
                             const evidence::Limit& limit, const identify::PartEvidence& part);

// Of such a limit: the frames with a reading that tell whether the part is one of these.
std::vector<std::size_t> frames_that_tell(const vocabulary::ConceptTree& tree, const evidence::EvidenceData& data,
                                          const evidence::Limit& limit, const identify::PartEvidence& part);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_LIMIT_DECISION_H
