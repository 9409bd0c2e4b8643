// Goods other than the one that the listing sells.
#ifndef GRAINSIDE_CLAIMS_OTHER_GOODS_H
#define GRAINSIDE_CLAIMS_OTHER_GOODS_H

#include <bitset>
#include <cstdint>
#include <span>

#include "claims/piece.h"

namespace grainside::claims {

// The categories that a listing's product goes by, one bit each; none where its category is unknown.
struct OwnCategories {
    std::bitset<256> named;  // by the category, a title or the shelf
    std::bitset<256> kin;    // those, and whose nouns may name the same product: a 'case' is a bag too

    void add(const vocabulary::Vocabulary& vocabulary, std::uint8_t category);
};

// Silences noun phrases whose head names an everyday thing ('linen shirts' is one where bags are sold) or a product of
// a foreign category, and what it is said to be made of: 'trousers in wool'. Of what comes along ('comes with a leather
// key fob') any category that is not named is foreign, kin too.
void silence_other_goods(const OwnCategories& own, std::span<Piece> pieces);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_OTHER_GOODS_H
