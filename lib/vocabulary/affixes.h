// Coined names: unknown words that begin or end with a word of the trade ('leathertex').
#ifndef GRAINSIDE_VOCABULARY_AFFIXES_H
#define GRAINSIDE_VOCABULARY_AFFIXES_H

#include <algorithm>
#include <limits>
#include <string>
#include <string_view>
#include <vector>

#include "vocabulary/word_table.h"

namespace grainside::vocabulary {

class Affixes {
public:
    // Words that begin or end with `affix` stand for `id`.
    void add(std::string_view affix, WordId id) {
        known_.push_back({std::string(affix), id});
        shortest_ = std::min(shortest_, affix.size() + kShortestRest);
    }

    // 0 where `word` has none, or is little more than the affix itself.
    WordId find(std::string_view word) const noexcept { return word.size() < shortest_ ? 0 : find_in_long(word); }

private:
    static constexpr std::size_t kShortestRest = 2;  // 'leathers' is a plural

    WordId find_in_long(std::string_view word) const noexcept;

    struct Known {
        std::string affix;
        WordId id = 0;
    };
    std::vector<Known> known_;
    std::size_t shortest_ = std::numeric_limits<std::size_t>::max();  // word that any of them fits
};

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_AFFIXES_H
