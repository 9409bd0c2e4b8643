#include "claims/other_goods.h"

namespace grainside::claims {

using vocabulary::Role;

namespace {

// 'comes with a strap in suede, a leather wallet and a key fob'
bool goes_on_in_list(const Piece& piece) {
    return piece.is(Role::article) || piece.is(Role::determiner) || piece.is(Role::conjunction) ||
           piece.is(Role::link) || piece.is_mark(text::TokenKind::comma);
}

}  // namespace

void OwnCategories::add(const vocabulary::Vocabulary& vocabulary, std::uint8_t category) {
    if (category == 0) return;
    named.set(category);
    kin.set(category);
    for (const std::uint8_t other : vocabulary.categories[category].kin) kin.set(other);
}

void silence_other_goods(const OwnCategories& own, std::span<Piece> pieces) {
    const auto is_outside = [&](const Piece& piece, const std::bitset<256>& categories) {
        return piece.is(Role::product) && !piece.sense.homonym && categories.any() && piece.sense.value != 0 &&
               !categories.test(piece.sense.value);
    };
    bool comes_along = false;  // within what a 'comes with' lists
    for (std::size_t head = 0; head < pieces.size(); ++head) {
        if (pieces[head].is(Role::comes_along)) {
            comes_along = true;
        } else if (comes_along && ends_phrase(pieces[head])) {
            comes_along = goes_on_in_list(pieces[head]);
        }
        const bool is_foreign =
            pieces[head].is(Role::thing) || is_outside(pieces[head], comes_along ? own.named : own.kin);
        // Only the last word of a phrase is its head: 'camera compartment' is none.
        if (!is_foreign || (head + 1 < pieces.size() && !ends_phrase(pieces[head + 1]))) continue;
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
