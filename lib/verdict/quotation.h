// Whether words are quoted from somebody: a buyer's praise is not the seller's to mend. Thread-safe.
#ifndef GRAINSIDE_VERDICT_QUOTATION_H
#define GRAINSIDE_VERDICT_QUOTATION_H

#include <cstddef>
#include <string_view>

namespace grainside::verdict {

// True where text[start, end) stands between quotation marks, straight or curly, with more words beside it. Words that
// fill their quotation marks are none of somebody's: the seller calls something so. A mark behind a digit is an inch.
// True also on a line that begins with '>'.
// Looks at one line, and no further than 600 bytes to either side.
bool stands_in_quotation(std::string_view text, std::size_t start, std::size_t end);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_QUOTATION_H
