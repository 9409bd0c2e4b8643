// What is offered beside the product: other products, accessories, packaging.
#ifndef GRAINSIDE_CLAIMS_OFFERS_H
#define GRAINSIDE_CLAIMS_OFFERS_H

#include <span>

#include "claims/piece.h"

namespace grainside::claims {

// By their cues: from 'pairs with' to the end of the sentence, from 'sold separately' back to the clause's start, from
// 'packed in' to the next comma.
void silence_offers(std::span<Piece> pieces);

// A noun phrase whose head is an accessory, and what that accessory is said to be made of; in a title not what stands
// before another noun.
void silence_accessories(const vocabulary::Vocabulary& vocabulary, bool title, std::span<Piece> pieces);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_OFFERS_H
