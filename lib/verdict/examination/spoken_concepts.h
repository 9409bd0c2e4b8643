// What the grammar can make claims of.
#ifndef GRAINSIDE_VERDICT_EXAMINATION_SPOKEN_CONCEPTS_H
#define GRAINSIDE_VERDICT_EXAMINATION_SPOKEN_CONCEPTS_H

#include <cstdint>

#include "rules/book_data.h"
#include "vocabulary/vocabulary.h"

namespace grainside::verdict {

// The concepts that a term of the vocabulary stands for.
vocabulary::ConceptSet concepts_with_terms(const rules::BookData& book);

// The same with those that the grammar composes by itself: 'PU-coated canvas' is a coated fabric.
vocabulary::ConceptSet spoken_concepts(const rules::BookData& book);

// The kinds that a claim of this concept can have, as bits: its own; of what a part can be made of also composition,
// where it has a percentage, and quality, where it is only likened.
std::uint32_t kinds_of_claims(const vocabulary::Vocabulary& vocabulary, ConceptId id) noexcept;

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_EXAMINATION_SPOKEN_CONCEPTS_H
