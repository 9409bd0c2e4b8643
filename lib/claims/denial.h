// Denial: which pieces a no covers.
#ifndef GRAINSIDE_CLAIMS_DENIAL_H
#define GRAINSIDE_CLAIMS_DENIAL_H

#include <span>

#include "claims/piece.h"

namespace grainside::claims {

// Sets Piece::negated.
void mark_negation(std::span<Piece> pieces);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_DENIAL_H
