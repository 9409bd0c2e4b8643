// Spelling variants by rule, made once when the vocabulary is loaded.
#ifndef GRAINSIDE_VOCABULARY_SPELLING_H
#define GRAINSIDE_VOCABULARY_SPELLING_H

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace grainside::vocabulary {

// The English plurals of a singular and the singular of a regular plural: strap -> straps, finish -> finishes,
// alloy -> alloys, body -> bodies. Words of under three letters and words with digits have none.
std::vector<std::string> number_forms(std::string_view word);

// Two spellings of one word, or of a part of words: fibre and fiber.
struct SpellingPair {
    SpellingPair(std::string_view first, std::string_view second);
    std::string left;
    std::string right;
    std::uint32_t left_letters;  // one bit a letter: a side whose letters are not all in a word cannot stand in it
    std::uint32_t right_letters;
};

// The other spelling of `word` for each pair of which it holds one side: microfibre -> microfiber by [fibre, fiber].
// A pair side of under five letters counts only as the whole word, since 'grey' stands inside 'greyhound'.
std::vector<std::string> paired_forms(std::string_view word, std::span<const SpellingPair> pairs);

// Whether two words of a term may be written as one: two letters or more each, six together, and no digits.
bool can_be_joined(std::string_view left, std::string_view right);

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_SPELLING_H
