// Single slips of the pen in long words.
#ifndef GRAINSIDE_VOCABULARY_MISSPELLINGS_H
#define GRAINSIDE_VOCABULARY_MISSPELLINGS_H

#include <array>
#include <cstdint>
#include <string_view>
#include <vector>

#include "vocabulary/bit_filter.h"
#include "vocabulary/word_table.h"

namespace grainside::vocabulary {

// Words this short are too near to other words: 'lather' is six letters, 'leather' seven.
inline constexpr std::uint32_t kShortestMisspelt = 7;
inline constexpr std::uint32_t kLongestMisspelt = 32;

// Finds the known word that an unknown one is a misspelling of: one letter dropped, added, changed, or two neighbours
// swapped (Damerau 1964: these four make up most slips), the first letter being right. By deletion neighbourhoods: two
// words within one edit share a form with one letter removed, so hashes of those are kept and a bit filter in front
// answers nearly every query.
class Misspellings {
public:
    // `word` can be misspelt and stands for `id`.
    void add(std::string_view word, WordId id);
    // `word` is a word of the language and never a slip ('feather' for 'leather').
    void protect(std::string_view word);
    void freeze();

    // 0 where `word` is near none. REQUIRES: freeze() was called.
    WordId find(std::string_view word) const noexcept {
        return word.size() + 1 < kShortestMisspelt || !may_be_misspelt(word) ? 0 : find_likely(word);
    }

private:
    struct Entry {
        std::uint32_t hash = 0;  // half a hash: what is found is compared letter by letter
        std::uint32_t word = 0;  // index into words_
    };
    struct Known {
        std::uint32_t offset = 0;
        std::uint32_t length = 0;
        WordId id = 0;
    };
    std::string_view text(const Known& known) const noexcept { return {texts_.data() + known.offset, known.length}; }
    // A slip leaves the first letter and changes the length by one at most. REQUIRES: `word` is not empty.
    bool may_be_misspelt(std::string_view word) const noexcept {
        return word.size() <= kLongestMisspelt &&
               (lengths_[static_cast<unsigned char>(word.front())] >> (word.size() - 1) & 7) != 0;
    }
    WordId find_likely(std::string_view word) const noexcept;
    bool is_protected(std::string_view word) const noexcept;

    std::vector<Entry> entries_;
    std::vector<Known> words_;
    std::vector<char> texts_;
    std::vector<std::uint64_t> protected_;  // hashes, sorted
    BitFilter filter_;
    // By first byte: which lengths the words that begin with it have, as bits.
    std::array<std::uint64_t, 256> lengths_{};
};

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_MISSPELLINGS_H
