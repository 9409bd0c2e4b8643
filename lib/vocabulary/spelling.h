// Spelling variants by rule, made once when the vocabulary is loaded.
#ifndef GRAINSIDE_VOCABULARY_SPELLING_H
#define GRAINSIDE_VOCABULARY_SPELLING_H

#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace grainside::vocabulary {

// The English plurals of a singular and the singular of a regular plural: strap -> straps, finish -> finishes,
// alloy -> alloys, body -> bodies. Words of under three letters and words with digits have none.
std::vector<std::string> number_forms(std::string_view word);

// The other spelling of `word` for each pair of which it holds one side: microfibre -> microfiber by [fibre, fiber].
// A pair side of under five letters counts only as the whole word, since 'grey' stands inside 'greyhound'.
std::vector<std::string> paired_forms(std::string_view word,
                                      std::span<const std::pair<std::string, std::string>> pairs);

// Whether two words of a term may be written as one: two letters or more each, six together, and no digits.
bool can_be_joined(std::string_view left, std::string_view right);

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_SPELLING_H
