// What stands around a superlative for its sake alone.
#ifndef GRAINSIDE_VERDICT_SUPERLATIVE_H
#define GRAINSIDE_VERDICT_SUPERLATIVE_H

#include <optional>
#include <string_view>
#include <variant>

#include "verdict/fitted_edit.h"
#include "verdict/neighbour_words.h"

namespace grainside::verdict {

// 'the [finest leather]': the 'the' that goes with a superlative that goes, where a stuff without article reads right;
// else nothing fits ('the [finest leather] bag', "the world's [finest]"). Nothing where no superlative goes.
std::variant<std::optional<Word>, NoFit> article_of_superlative(const Place& place, std::string_view wording);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_SUPERLATIVE_H
