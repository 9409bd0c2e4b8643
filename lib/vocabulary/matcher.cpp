#include "vocabulary/matcher.h"

namespace grainside::vocabulary {

namespace {

// Words of no term are seldom long enough to be looked at as a slip of the pen or a coined name.
WordId guess(const Vocabulary& vocabulary, const text::Tokens& tokens, const text::Token& token) {
    const std::string_view word = tokens.folded_text(token);
    const WordId misspelt = vocabulary.misspellings.find(word);
    return misspelt != 0 ? misspelt : vocabulary.affixes.find(word);
}

void find_words(const Vocabulary& vocabulary, const text::Tokens& tokens, WordId* ids) {
    const char* const folded = tokens.folded.data();
    for (const text::Token& token : tokens.list) {
        WordId id = 0;
        if (token.kind <= text::TokenKind::number) {
            id = vocabulary.words.find_padded(folded + token.folded_offset, token.folded_length);
            if (id == 0 && token.kind == text::TokenKind::word) id = guess(vocabulary, tokens, token);
        }
        *ids++ = id;
    }
}

}  // namespace

void match_terms(const Vocabulary& vocabulary, const text::Tokens& tokens, std::vector<WordId>& word_ids,
                 std::vector<Hit>& hits) {
    hits.clear();
    word_ids.resize(tokens.list.size());
    // Words first, terms after: neither loop has much to keep in mind.
    find_words(vocabulary, tokens, word_ids.data());
    const TermTrie& terms = vocabulary.terms;
    const WordId* const ids = word_ids.data();
    const auto count = static_cast<std::uint32_t>(word_ids.size());
    for (std::uint32_t first = 0; first < count;) {
        std::uint32_t last = first + 1;
        if (ids[first] != 0) {
            TermTrie::Place place = terms.first(ids[first]);
            TermTrie::Place best = place.ends_term() ? place : TermTrie::Place{};
            if (last < count && place.goes_on() && terms.may_begin_with(ids[first], ids[last])) {
                for (std::uint32_t at = last; place.goes_on() && at < count && ids[at] != 0; ++at) {
                    place = terms.step(place.node(), ids[at]);
                    if (!place.ends_term()) continue;
                    best = place;
                    last = at + 1;
                }
            }
            if (best.exists()) hits.push_back({first, last, best.node()});
        }
        first = last;
    }
}

}  // namespace grainside::vocabulary
