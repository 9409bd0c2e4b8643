// Clauses of a segment: what stands between semicolons, colons and dashes.
#ifndef GRAINSIDE_CLAIMS_CLAUSES_H
#define GRAINSIDE_CLAIMS_CLAUSES_H

#include <cstddef>
#include <span>

#include "claims/piece.h"

namespace grainside::claims {

// Marks pieces [first, last) as claiming nothing of the product.
void silence(std::span<Piece> pieces, std::size_t first, std::size_t last);

bool ends_clause(const Piece& piece);
std::size_t clause_end(std::span<const Piece> pieces, std::size_t from);
std::size_t clause_start(std::span<const Piece> pieces, std::size_t from);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_CLAUSES_H
