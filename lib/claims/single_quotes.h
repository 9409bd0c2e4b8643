// Single quotes around a name: The 'Silk Road' tote. They are apostrophes too, so that they are no tokens.
#ifndef GRAINSIDE_CLAIMS_SINGLE_QUOTES_H
#define GRAINSIDE_CLAIMS_SINGLE_QUOTES_H

#include <cstddef>
#include <string_view>

#include "text/token.h"

namespace grainside::claims {

// False where there is none for sure: cheaper than asking at each word.
inline bool may_hold_single_quotes(std::string_view text) {
    constexpr char kTypographic = '\xE2';  // the first byte of U+2018 and U+2019 in UTF-8
    constexpr auto kNone = std::string_view::npos;
    return text.find('\'') != kNone || text.find(kTypographic) != kNone || text.find('&') != kNone;
}

// Whether one opens right before the token `at`, behind a space, a mark or nothing. Straight, typographic or a
// character reference. Reads what lies between two tokens.
bool opens_single_quote(std::string_view text, const text::Tokens& tokens, std::size_t at);

// Whether one closes right behind the token `at`, before a space, a mark or nothing.
bool closes_single_quote(std::string_view text, const text::Tokens& tokens, std::size_t at);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_SINGLE_QUOTES_H
