// The words around a place in a text.
#ifndef GRAINSIDE_VERDICT_NEIGHBOUR_WORDS_H
#define GRAINSIDE_VERDICT_NEIGHBOUR_WORDS_H

#include <cstddef>
#include <initializer_list>
#include <optional>
#include <string_view>
#include <vector>

namespace grainside::verdict {

// The furthest that is looked to either side, in bytes.
inline constexpr std::size_t kNeighbourReach = 80;

struct Word {
    std::size_t start = 0;
    std::size_t end = 0;
    std::string_view in(std::string_view text) const { return text.substr(start, end - start); }
};

// '2.5', 'cow-hide', "calf's"
bool is_in_word(std::string_view text, std::size_t at);

// Right before and right behind `at`, over one space or one line's end; nothing where something else stands between.
std::optional<Word> word_in_front(std::string_view text, std::size_t at);
std::optional<Word> word_behind(std::string_view text, std::size_t at);

// What spaces part.
std::vector<Word> words_of(std::string_view wording);

// In any case of letters.
bool is_one_of(std::string_view word, std::initializer_list<std::string_view> words);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_NEIGHBOUR_WORDS_H
