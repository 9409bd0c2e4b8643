#include "claims/denial.h"

#include "claims/clauses.h"

namespace grainside::claims {

using text::TokenKind;
using vocabulary::Role;

namespace {

// Whether a list goes on behind this comma up to an 'or' or 'nor': 'no leather, fur or wool'.
bool list_goes_on(std::span<const Piece> pieces, std::size_t comma) {
    constexpr std::size_t kReach = 16;
    for (std::size_t i = comma + 1; i < pieces.size() && i <= comma + kReach; ++i) {
        if (pieces[i].is(Role::alternative)) return true;
        if (pieces[i].is_mark(TokenKind::comma) || !ends_phrase(pieces[i])) continue;
        return false;
    }
    return false;
}

bool has_noun(std::span<const Piece> pieces, std::size_t from) {
    for (std::size_t i = from; i < pieces.size() && !ends_phrase(pieces[i]); ++i) {
        if (pieces[i].is(Role::part) || pieces[i].is(Role::product)) return true;
    }
    return false;
}

}  // namespace

void mark_negation(std::span<Piece> pieces) {
    bool negated = false;
    bool covers_something = false;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        Piece& piece = pieces[i];
        if (piece.is(Role::negator)) {
            // 'No, it is cotton' and 'Waterproof: no (cotton)' answer and deny nothing behind the mark.
            const bool begins = i == 0 || pieces[i - 1].kind == PieceKind::mark;
            const bool is_value = i > 0 && pieces[i - 1].is_mark(TokenKind::colon);
            if (i + 1 < pieces.size() && ((begins && pieces[i + 1].is_mark(TokenKind::comma)) ||
                                          (is_value && pieces[i + 1].is_mark(TokenKind::open)))) {
                continue;
            }
            negated = true;
            covers_something = false;
            continue;
        }
        if (!negated) continue;
        if (piece.is(Role::negation_end) || piece.is(Role::exception) || ends_clause(piece) ||
            piece.is_mark(TokenKind::close) ||
            // 'no PVC with cotton' ends there; 'not with PVC' has denied nothing yet.
            ((is_with(piece) || piece.is(Role::link)) && covers_something) ||
            (piece.is_mark(TokenKind::comma) && covers_something && !list_goes_on(pieces, i)) ||
            (piece.is(Role::conjunction) && covers_something &&
             (i + 1 >= pieces.size() || ends_phrase(pieces[i + 1]) || has_noun(pieces, i + 1)))) {
            negated = false;
            continue;
        }
        if (!ends_phrase(piece)) covers_something = true;
        piece.negated = true;
    }
}

}  // namespace grainside::claims
