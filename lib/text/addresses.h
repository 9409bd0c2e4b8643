// Addresses within a text: of the web, of mail, and the targets of Markdown links and pictures. Their words lead
// somewhere and say nothing: 'img/vegan-leather.jpg' claims no more than the name of any file.
#ifndef GRAINSIDE_TEXT_ADDRESSES_H
#define GRAINSIDE_TEXT_ADDRESSES_H

#include <string_view>

#include "text/token.h"

namespace grainside::text {

// An address in running text ('https://...', 'www....', 'name@shop.example') becomes one word without a folded form,
// which no vocabulary knows: it still stands between the words around it. The '(target "title")' of a Markdown link or
// picture (CommonMark 0.30, section 6.3) leaves no token; the brackets with the visible words stay. As sellers put
// Markdown into feeds too, this holds of every text, and thus only where the target looks like one: without spaces, and
// with a mark that no word has ('/', '.', '#', '?', ':'). A target without any, and the reference style of links, are
// read as words.
//
// REQUIRES: `tokens` were cut from `text`. Places of all other tokens stay. Linear; no allocation.
void pass_over_addresses(std::string_view text, Tokens& tokens);

}  // namespace grainside::text

#endif  // GRAINSIDE_TEXT_ADDRESSES_H
