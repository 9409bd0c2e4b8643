// Single quotes around a name: The 'Silk Road' tote. They are apostrophes too, so that they are no tokens.
#ifndef GRAINSIDE_CLAIMS_SINGLE_QUOTES_H
#define GRAINSIDE_CLAIMS_SINGLE_QUOTES_H

#include <cstddef>
#include <string_view>

#include "text/token.h"

namespace grainside::claims {

// Whether one opens right before the token `at`, behind a space, a mark or nothing. Straight, typographic or a
// character reference. Reads what lies between two tokens.
bool opens_single_quote(std::string_view text, const text::Tokens& tokens, std::size_t at);

// Whether one closes right behind the token `at`, before a space, a mark or nothing.
bool closes_single_quote(std::string_view text, const text::Tokens& tokens, std::size_t at);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_SINGLE_QUOTES_H
