// Labels that are answered with yes or no: 'Waterproof: no'.
#ifndef GRAINSIDE_CLAIMS_ANSWERS_H
#define GRAINSIDE_CLAIMS_ANSWERS_H

#include <span>
#include <vector>

#include "claims/piece.h"
#include "claims/segment.h"
#include "grainside/claim.h"

namespace grainside::claims {

// What a label of nothing but meanings asks for ('Waterproof', 'Genuine leather'); 0 = nothing. Praise, craft and
// origins are not asked for: a 'yes' to 'Imported' names no country.
ConceptId asked_by_label(const vocabulary::Vocabulary& vocabulary, std::span<const Piece> label);

// Denies what stands before ': no'.
void deny_answered_labels(std::span<Piece> pieces);

// The claim of an attribute whose value begins with yes or no, on that word; `asked` is what its name asks for.
void parse_answer(const SegmentContext& segment, ConceptId asked, std::vector<Claim>& claims);

// The claim of an answer that is no more than yes: 'Is it real leather? Yes!' `question` is what was asked.
void parse_yes(const SegmentContext& segment, const Region& question, std::vector<Claim>& claims);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_ANSWERS_H
