// Sentences about materials in general, and subjects that only take up what is said elsewhere.
#ifndef GRAINSIDE_CLAIMS_TEACHING_H
#define GRAINSIDE_CLAIMS_TEACHING_H

#include <span>

#include "claims/piece.h"

namespace grainside::claims {

// 'Bonded leather is made from shredded fibres', 'Some brands use ...'
void silence_teaching(std::span<Piece> pieces);

// 'Full grain leather is the outside of the hide': a bare material, 'is', and what it is; 'Leather is full grain' and
// 'The leather is 2 mm' describe the product.
void silence_definitions(std::span<Piece> pieces);

// 'The leather is full grain cowhide', 'Leather: cowhide': the subject only takes up what the predicate names.
void silence_subjects(const vocabulary::Vocabulary& vocabulary, std::span<Piece> pieces);

// 'The leather darkens with your hands', 'the canvas marks where it folds': what it does, and no statement of what it
// is.
void silence_taken_up(const vocabulary::Vocabulary& vocabulary, std::span<Piece> pieces);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_TEACHING_H
