// Finding terms in tokens: leftmost, longest, one pass.
#ifndef GRAINSIDE_VOCABULARY_MATCHER_H
#define GRAINSIDE_VOCABULARY_MATCHER_H

#include <cstdint>
#include <vector>

#include "text/token.h"
#include "vocabulary/vocabulary.h"

namespace grainside::vocabulary {

struct Hit {
    std::uint32_t first = 0;  // half-open range of tokens
    std::uint32_t last = 0;
    TermTrie::NodeId end = 0;  // where its senses are
};

// Fills `hits` in order, without overlap, and `word_ids` (one a token, 0 for marks and unknown words). Terms never
// cross a mark. Cost: one table look a token and one a step of a term, however many terms there are; an unknown word of
// six letters or more is also looked up as a misspelling. No allocation once grown.
void match_terms(const Vocabulary& vocabulary, const text::Tokens& tokens, std::vector<WordId>& word_ids,
                 std::vector<Hit>& hits);

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_MATCHER_H
