#include "vocabulary/matcher.h"

namespace grainside::vocabulary {

void match_terms(const Vocabulary& vocabulary, const text::Tokens& tokens, std::vector<WordId>& word_ids,
                 std::vector<Hit>& hits) {
    hits.clear();
    const auto count = static_cast<std::uint32_t>(tokens.list.size());
    word_ids.resize(count);
    // Words first, terms after: the first loop has few branches that depend on the text.
    for (std::uint32_t i = 0; i < count; ++i) {
        const text::Token& token = tokens.list[i];
        word_ids[i] =
            token.kind <= text::TokenKind::number
                ? vocabulary.words.find_padded(tokens.folded.data() + token.folded_offset, token.folded_length)
                : 0;
    }
    for (std::uint32_t i = 0; i < count;) {
        TermTrie::NodeId node = 0;
        TermTrie::NodeId best = 0;
        std::uint32_t best_last = i;
        for (std::uint32_t j = i; j < count; ++j) {
            if (word_ids[j] == 0 && tokens.list[j].kind == text::TokenKind::word) {
                const std::string_view word = tokens.folded_text(tokens.list[j]);
                word_ids[j] = vocabulary.misspellings.find(word);
                if (word_ids[j] == 0) word_ids[j] = vocabulary.affixes.find(word);
            }
            if (word_ids[j] == 0) break;
            node = j == i ? vocabulary.terms.first(word_ids[j]) : vocabulary.terms.step(node, word_ids[j]);
            if (node == 0) break;
            if (!vocabulary.terms.senses(node).empty()) {
                best = node;
                best_last = j + 1;
            }
        }
        if (best != 0) {
            hits.push_back({i, best_last, best});
            i = best_last;
        } else {
            ++i;
        }
    }
}

}  // namespace grainside::vocabulary
