// Scopes: which pieces of a segment claim nothing of the product, and which are denied.
#ifndef GRAINSIDE_CLAIMS_SCOPES_H
#define GRAINSIDE_CLAIMS_SCOPES_H

#include <span>

#include "claims/piece.h"
#include "text/segments.h"

namespace grainside::claims {

// Sets Piece::silent for questions, general teaching, care advice, other products, what is only packed with the
// product, comparisons and idioms, and Piece::negated for what a denial covers. Pieces that are silent already stay so.
void mark_scopes(const vocabulary::Vocabulary& vocabulary, text::SegmentKind kind, bool title,
                 const Inventory& inventory, std::span<Piece> pieces);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_SCOPES_H
