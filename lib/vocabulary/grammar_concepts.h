// The concepts that the grammar asks for by name.
#ifndef GRAINSIDE_VOCABULARY_GRAMMAR_CONCEPTS_H
#define GRAINSIDE_VOCABULARY_GRAMMAR_CONCEPTS_H

#include "document/faults.h"
#include "vocabulary/vocabulary.h"

namespace grainside::vocabulary {

// Sets vocabulary.known; a concept that is missing is a fault.
void resolve_grammar_concepts(Vocabulary& vocabulary, document::Faults& faults);

// Those of `vocabulary.known`: the grammar makes claims of them without a term that stands for them.
ConceptSet concepts_of_grammar(const Vocabulary& vocabulary);

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_GRAMMAR_CONCEPTS_H
