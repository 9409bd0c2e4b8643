// Coined names: unknown words that begin or end with a word of the trade ('leathertex').
#ifndef GRAINSIDE_VOCABULARY_AFFIXES_H
#define GRAINSIDE_VOCABULARY_AFFIXES_H

#include <string>
#include <string_view>
#include <vector>

#include "vocabulary/word_table.h"

namespace grainside::vocabulary {

class Affixes {
public:
    // Words that begin or end with `affix` stand for `id`.
    void add(std::string_view affix, WordId id) { known_.push_back({std::string(affix), id}); }

    // 0 where `word` has none, or is little more than the affix itself.
    WordId find(std::string_view word) const noexcept;

private:
    struct Known {
        std::string affix;
        WordId id = 0;
    };
    std::vector<Known> known_;
};

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_AFFIXES_H
