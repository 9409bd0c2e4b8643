// Folding and cutting a text in one pass, without losing a byte's place.
//
// Fold: compatibility forms (NFKC), full case folding, marks dropped (e acute -> e), width, ligatures, sharp s -> ss,
// typographic apostrophes dropped inside words, soft hyphens, zero-width and directional control characters dropped as
// if they were not there, HTML character references decoded, HTML tags passed over as gaps (block tags as line ends;
// the content of script, style and comments is passed over). Letters of other scripts that look like Latin ones (UTS
// #39 confusables: Cyrillic, Greek, Armenian) are folded to Latin in words that also hold a Latin letter, and the token
// is flagged; words wholly in another script keep it. Hyphens inside words cut the word and flag the next token. A lone
// '<' that begins no tag, and an '&' that begins no reference, stand for themselves. Where the fold departs from NFKC
// on purpose is listed in tests/unit/text/fold_test.cpp and at the top of make_fold_table.cpp.
//
// Cost: linear; ASCII runs in blocks of 64 bytes, other characters by table. No allocation once the buffers have grown.
#ifndef GRAINSIDE_TEXT_TOKENIZER_H
#define GRAINSIDE_TEXT_TOKENIZER_H

#include <string_view>

#include "text/token.h"

namespace grainside::text {

// Fills `tokens` from `text`. REQUIRES: text.size() <= kMaxFieldBytes (16 MiB). Never fails: invalid UTF-8 bytes and
// NUL are gaps. Tokens come in order, do not overlap, and begin and end on character borders. Thread-safe for distinct
// `tokens`.
void tokenize(std::string_view text, Tokens& tokens);

// The same, byte by byte, simple and slow: the yardstick that tests and the fuzzer hold `tokenize` to.
void tokenize_plainly(std::string_view text, Tokens& tokens);

}  // namespace grainside::text

#endif  // GRAINSIDE_TEXT_TOKENIZER_H
