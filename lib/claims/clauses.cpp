#include "claims/clauses.h"

namespace grainside::claims {

using text::TokenKind;

void silence(std::span<Piece> pieces, std::size_t first, std::size_t last) {
    for (std::size_t i = first; i < last && i < pieces.size(); ++i) pieces[i].silent = true;
}

bool ends_clause(const Piece& piece) {
    return piece.is_mark(TokenKind::semicolon) || piece.is_mark(TokenKind::colon) || piece.is_mark(TokenKind::dash);
}

std::size_t clause_end(std::span<const Piece> pieces, std::size_t from) {
    while (from < pieces.size() && !ends_clause(pieces[from])) ++from;
    return from;
}

std::size_t clause_start(std::span<const Piece> pieces, std::size_t from) {
    while (from > 0 && !ends_clause(pieces[from - 1])) --from;
    return from;
}

}  // namespace grainside::claims
