// 'a' and 'an' before words that changed.
#ifndef GRAINSIDE_VERDICT_ARTICLE_H
#define GRAINSIDE_VERDICT_ARTICLE_H

#include <string_view>

#include "verdict/fitted_edit.h"

namespace grainside::verdict {

// Makes the edit begin with the article in front, where there is one and it changes. `next` is the word that it now
// stands before; the sound is told by the first letter, with the usual exceptions ('an hour', 'a unit', 'an MDF
// board').
void put_article_right(std::string_view text, FittedEdit& edit, std::string_view next);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_ARTICLE_H
