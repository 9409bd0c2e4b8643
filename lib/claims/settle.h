// What each ambiguous term means where it stands.
#ifndef GRAINSIDE_CLAIMS_SETTLE_H
#define GRAINSIDE_CLAIMS_SETTLE_H

#include <vector>

#include "claims/piece.h"

namespace grainside::claims {

// Gives each term among `pieces` one sense: a conditional meaning where its condition holds (looking to the right over
// words already settled), else the first other sense in the order of the vocabulary files. A term none of whose senses
// holds becomes a plain word.
void settle_senses(const PieceSource& source, std::vector<Piece>& pieces);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_SETTLE_H
