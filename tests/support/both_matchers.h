// The matcher under test and the naive one (naive_matcher.h), made of the same terms.
#ifndef GRAINSIDE_TESTS_SUPPORT_BOTH_MATCHERS_H
#define GRAINSIDE_TESTS_SUPPORT_BOTH_MATCHERS_H

#include <cstddef>
#include <string_view>
#include <vector>

#include "naive_matcher.h"
#include "text/tokenizer.h"
#include "vocabulary/matcher.h"

namespace grainside::support {

class BothMatchers {
public:
    // REQUIRES: the terms differ, so that a term is named by one number.
    explicit BothMatchers(const std::vector<NaiveTerm>& terms) : naive_(terms, vocabulary::kShortestMisspelt) {
        for (std::size_t i = 0; i < terms.size(); ++i) {
            std::vector<vocabulary::WordId> path;
            for (const std::string& word : terms[i]) path.push_back(vocabulary_.words.intern(word));
            vocabulary::Sense sense;
            sense.concept_id = static_cast<ConceptId>(i + 1);
            vocabulary_.terms.add(path, sense);
            for (std::size_t w = 0; w < path.size(); ++w) vocabulary_.misspellings.add(terms[i][w], path[w]);
        }
        vocabulary_.misspellings.freeze();
        vocabulary_.terms.freeze();
    }

    bool agree(std::string_view text) {
        text::tokenize(text, tokens_);
        return agree(tokens_);
    }

    bool agree(const text::Tokens& tokens) {
        vocabulary::match_terms(vocabulary_, tokens, word_ids_, hits_);
        std::vector<NaiveHit> found;
        for (const vocabulary::Hit& hit : hits_) {
            const auto senses = vocabulary_.terms.senses(hit.end);
            found.push_back({hit.first, hit.last, senses.empty() ? 0 : senses[0].concept_id - std::size_t{1}});
        }
        return found == naive_.match(tokens);
    }

private:
    vocabulary::Vocabulary vocabulary_;
    NaiveMatcher naive_;
    text::Tokens tokens_;
    std::vector<vocabulary::WordId> word_ids_;
    std::vector<vocabulary::Hit> hits_;
};

}  // namespace grainside::support

#endif  // GRAINSIDE_TESTS_SUPPORT_BOTH_MATCHERS_H
