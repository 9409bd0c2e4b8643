// The usual ranges of the book beside a dossier's costs: what is missing, and what lies outside.
//
// A range speaks for a line where its groups, materials and categories do; a line that states no material is held
// only against those that are for any material. Nothing is filled in. Thread-safe.
#ifndef GRAINSIDE_COST_USUAL_COSTS_H
#define GRAINSIDE_COST_USUAL_COSTS_H

#include <string>
#include <vector>

#include "evidence/dossier_data.h"
#include "grainside/cost.h"
#include "grainside/evidence_book.h"

namespace grainside::cost {

// Lines without a price, quantity, time or yield, and expected groups that are not there, each with what is usual.
std::vector<CostGap> gaps_of(const EvidenceBook& book, const evidence::DossierData& dossier,
                             const evidence::DossierCosts& costs);

struct UnusualCosts {
    std::vector<UnusualCost> found;
    // What was not compared, one sentence for each currency in which ranges stand and the costs have no rate for.
    std::vector<std::string> remarks;
};
UnusualCosts unusual_costs(const EvidenceBook& book, const evidence::DossierData& dossier,
                           const evidence::DossierCosts& costs);

std::vector<UsualRange> usual_multiples(const EvidenceBook& book);

}  // namespace grainside::cost

#endif  // GRAINSIDE_COST_USUAL_COSTS_H
