// The place that an origin names: 'made in Italy', 'sewn by skilled hands in our own workshop in Leeds'.
#ifndef GRAINSIDE_CLAIMS_PLACE_BEHIND_H
#define GRAINSIDE_CLAIMS_PLACE_BEHIND_H

#include <cstddef>
#include <span>

#include "claims/piece.h"
#include "vocabulary/vocabulary.h"

namespace grainside::claims {

// Where the place stands that what begins at `at` leads to, over makers, their workshops and praise of either; the
// number of pieces where it leads to none. What stands behind `at` has to be settled.
std::size_t place_behind(const vocabulary::Vocabulary& vocabulary, std::span<const Piece> pieces, std::size_t at);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_PLACE_BEHIND_H
