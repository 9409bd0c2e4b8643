#include "claims/place_behind.h"

#include <algorithm>

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;

std::size_t place_behind(const vocabulary::Vocabulary& vocabulary, std::span<const Piece> pieces, std::size_t at) {
    constexpr std::size_t kReach = 10;  // 'made by our family of makers in a small shed near Leeds'
    const std::size_t end = std::min(pieces.size(), at + kReach + 1);
    for (std::size_t i = at + 1; i < end; ++i) {
        const Piece& piece = pieces[i];
        if (piece.is(Role::place_name)) return i;
        if (piece.is(Role::meaning)) {
            if (!is_mention(vocabulary.concepts[piece.sense.concept_id].kind)) break;
        } else if (is_noun(piece)) {
            break;
        } else if (piece.kind == PieceKind::mark) {
            const bool town_and_country =
                piece.is_mark(TokenKind::comma) && i + 1 < pieces.size() && pieces[i + 1].is(Role::place_name);
            if (!town_and_country) break;
        }
    }
    return pieces.size();
}

}  // namespace grainside::claims
