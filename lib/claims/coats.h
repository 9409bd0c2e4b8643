// Coats against what they lie on.
#ifndef GRAINSIDE_CLAIMS_COATS_H
#define GRAINSIDE_CLAIMS_COATS_H

#include <span>

#include "grainside/claim.h"
#include "vocabulary/vocabulary.h"

namespace grainside::claims {

// Sets Claim::of_total of each coat's thickness for which the listing states the thickness of the same part.
void set_coats_against_totals(const vocabulary::Vocabulary& vocabulary, std::span<Claim> claims);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_COATS_H
