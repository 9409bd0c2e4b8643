// The sentences of a verdict: why, and what would change it.
#ifndef GRAINSIDE_VERDICT_VERDICT_TEXT_H
#define GRAINSIDE_VERDICT_VERDICT_TEXT_H

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "grainside/judge.h"
#include "verdict/claim_evidence.h"

namespace grainside::verdict {

// One or two sentences on what the readings show of the claim.
std::string because_of(const Bench& bench, const Claim& claim, const ClaimEvidence& evidence);

// One sentence each: readings that carry the verdict, limits that were not read, repeats that would settle a number,
// and the test that would tell most (an index into EvidenceData::methods).
struct Changes {
    std::vector<std::string> sentences;
    std::optional<std::size_t> next_test;
};
Changes changes_of(const Bench& bench, const Claim& claim, const ClaimEvidence& evidence);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_VERDICT_TEXT_H
