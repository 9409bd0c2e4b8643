// Where a listing's titles stand: its name, or what a text labels so ('Product name: Leather wallet').
#ifndef GRAINSIDE_CLAIMS_TITLE_LINES_H
#define GRAINSIDE_CLAIMS_TITLE_LINES_H

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "text/token.h"
#include "vocabulary/matcher.h"
#include "vocabulary/vocabulary.h"

namespace grainside::claims {

// A half-open range of tokens of one field.
struct TitleLine {
    std::size_t field = 0;
    std::uint32_t first = 0;
    std::uint32_t last = 0;
};

// Adds the lines of a text that a label at their beginning, in the cell or on the line before calls a title, in order.
// Linear in the hits; a text without such a label costs a look at each.
void add_labelled_titles(const vocabulary::Vocabulary& vocabulary, const text::Tokens& tokens,
                         std::span<const vocabulary::Hit> hits, std::size_t field, std::vector<TitleLine>& titles);

}  // namespace grainside::claims

#endif  // GRAINSIDE_CLAIMS_TITLE_LINES_H
