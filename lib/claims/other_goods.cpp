#include "claims/other_goods.h"

namespace grainside::claims {

using vocabulary::Role;

void add_category(const vocabulary::Vocabulary& vocabulary, std::uint8_t category, OwnCategories& own) {
    if (category == 0) return;
    own.set(category);
    for (std::uint8_t kin : vocabulary.categories[category].kin) own.set(kin);
}

void silence_other_goods(const OwnCategories& own, std::span<Piece> pieces) {
    const auto is_foreign = [&](const Piece& piece) {
        if (piece.is(Role::thing)) return true;
        return piece.is(Role::product) && !piece.sense.homonym && own.any() && piece.sense.value != 0 &&
               !own.test(piece.sense.value);
    };
    for (std::size_t head = 0; head < pieces.size(); ++head) {
        // Only the last word of a phrase is its head: 'camera compartment' is none.
        if (!is_foreign(pieces[head]) || (head + 1 < pieces.size() && !ends_phrase(pieces[head + 1]))) continue;
        std::size_t start = head;
        while (start > 0 && !ends_phrase(pieces[start - 1])) --start;
        std::size_t before = start;
        while (before > 0 && (pieces[before - 1].is(Role::article) || pieces[before - 1].is(Role::determiner)))
            --before;
        // In 'sleeve for a laptop in felt' the felt is the sleeve's.
        const bool serves = before > 0 && pieces[before - 1].is(Role::purpose);
        std::size_t end = head + 1;
        if (!serves && end < pieces.size() && pieces[end].is(Role::link)) {
            while (end < pieces.size() && ends_phrase(pieces[end]) && pieces[end].kind == PieceKind::term) ++end;
            while (end < pieces.size() && !ends_phrase(pieces[end])) ++end;
        }
        for (std::size_t i = start; i < end; ++i) pieces[i].silent = true;
        head = end - 1;
    }
}

}  // namespace grainside::claims
