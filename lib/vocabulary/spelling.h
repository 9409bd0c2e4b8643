// Spelling variants by rule, made once when the vocabulary is loaded.
#ifndef GRAINSIDE_VOCABULARY_SPELLING_H
#define GRAINSIDE_VOCABULARY_SPELLING_H

#include <bitset>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace grainside::vocabulary {

// The English plurals of a singular and the singular of a regular plural: strap -> straps, finish -> finishes,
// alloy -> alloys, body -> bodies. Words of under three letters and words with digits have none.
std::vector<std::string> number_forms(std::string_view word);

// Pairs of spellings of one word, or of a part of words: fibre and fiber.
class SpellingPairs {
public:
    // REQUIRES: each side has three letters or more, which the loader sees to.
    void add(std::string_view left, std::string_view right);

    // The other spelling of `word` for each pair of which it holds one side, in the order of adding: microfibre ->
    // microfiber by [fibre, fiber]. A side of under five letters counts only as the whole word, since 'grey' stands
    // inside 'greyhound'.
    std::vector<std::string> forms(std::string_view word) const;

private:
    struct Side {
        std::string from;
        std::string to;
    };
    std::vector<Side> sides_;
    // The sides that begin alike, and whether any begins with three letters: nearly every place in a word begins none.
    static std::size_t beginning_of(std::string_view text) noexcept {
        const auto letter = [&](std::size_t i) { return static_cast<std::size_t>(text[i]) & 31; };
        return (letter(0) * 32 + letter(1)) * 32 + letter(2);
    }
    std::bitset<32 * 32 * 32> begins_;
    std::unordered_map<std::size_t, std::vector<std::uint32_t>> by_beginning_;
};

// Whether two words of a term may be written as one: two letters or more each, six together, and no digits.
bool can_be_joined(std::string_view left, std::string_view right);

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_SPELLING_H
