// Words as a key: equal for words that differ only in capitals, accents, spaces, hyphens and line ends.
#ifndef GRAINSIDE_TEXT_WORDS_KEY_H
#define GRAINSIDE_TEXT_WORDS_KEY_H

#include <string>
#include <string_view>

#include "text/token.h"

namespace grainside::text {

// Fills `key` from `words`; empty where they hold no letter and no digit. Marks count ('100 %' is not '100'), and two
// numbers are kept apart ('1-2' is not '12'). Linear; `tokens` is working memory.
// REQUIRES: words.size() <= kMaxFieldBytes.
void make_words_key(std::string_view words, Tokens& tokens, std::string& key);

}  // namespace grainside::text

#endif  // GRAINSIDE_TEXT_WORDS_KEY_H
