// The verdicts on a listing's claims: words and evidence together.
#ifndef GRAINSIDE_VERDICT_CLAIM_VERDICTS_H
#define GRAINSIDE_VERDICT_CLAIM_VERDICTS_H

#include <map>
#include <tuple>
#include <vector>

#include "grainside/checker.h"
#include "grainside/judge.h"
#include "verdict/claim_evidence.h"

namespace grainside::verdict {

// What a claim states, wherever and however often: claims that state the same of the same part share their evidence.
using Statement = std::tuple<Part, ConceptId, bool, Kind, bool, double, double, Unit>;
Statement statement_of(const Claim& claim);

// What a claim says to a reader, however it is counted: reports tell claims that say the same of the same part as one.
using Saying = std::tuple<Part, ConceptId, ConceptId, ConceptId, Kind, bool, bool>;
inline Saying saying_of(const Claim& claim) noexcept {
    return {claim.part, claim.says, claim.called, claim.place, claim.kind, claim.negated, claim.hedged};
}

// Evidence on every different statement of the listing.
std::map<Statement, ClaimEvidence> consider(const Bench& bench, const CheckResult& check);

// By mention of `check`: the grade that words and readings give it together; documents on file play no part.
std::vector<Grade> grades_of(const CheckResult& check, const std::map<Statement, ClaimEvidence>& considered);

struct ListingVerdicts {
    std::vector<Verdict> verdicts;      // in the order of the claims; then the findings on words that claim nothing
    std::vector<ReadingPlace> unasked;  // readings that tell nothing of what any claim is about
};

// `checker` made `check`.
ListingVerdicts verdicts_on(const Bench& bench, const RuleBook& book, const Listing& listing, const CheckResult& check,
                            const Checker& checker);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_CLAIM_VERDICTS_H
