// From the terms as they are listed to all the forms that are found in a text: plurals, other spellings, words joined.
#ifndef GRAINSIDE_VOCABULARY_TERM_FORMS_H
#define GRAINSIDE_VOCABULARY_TERM_FORMS_H

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "text/tokenizer.h"
#include "vocabulary/spelling.h"
#include "vocabulary/vocabulary.h"

namespace grainside::vocabulary {

class TermForms {
public:
    explicit TermForms(Vocabulary& vocabulary);  // which must outlive it

    // Adds a term of words and digits. One that `inflects` takes plurals and joined spellings: names of things do,
    // grammar words do not.
    void add(const text::Tokens& words, const Sense& sense, bool inflects);

    SpellingPairs& pairs() noexcept { return pairs_; }

    // Fills and freezes the vocabulary's terms and misspellings. Call once, when all terms and pairs are added.
    void build();

private:
    // A term as it stands in a file: its folded words as numbers, side by side with those of all other terms.
    struct Term {
        std::uint32_t first = 0;  // into path_words_
        std::uint32_t count = 0;
        Sense sense;
        bool inflects = false;
    };

    std::span<const WordId> path(const Term& term) const;
    void add_variants();
    void find_borrowed_nouns();
    void add_listed_forms();
    std::vector<WordId> forms_with_a_number(WordId word) const;
    void alias(const std::string& form, WordId id);
    void add_joined(const Term& term);

    Vocabulary& vocabulary_;
    std::vector<Term> terms_;
    std::vector<WordId> path_words_;
    std::vector<WordId> joined_;
    SpellingPairs pairs_;
    std::size_t aliases_ = 0;
};

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_TERM_FORMS_H
