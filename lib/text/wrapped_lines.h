// Prose that was wrapped to the width of a page: its line ends are no more than spaces.
#ifndef GRAINSIDE_TEXT_WRAPPED_LINES_H
#define GRAINSIDE_TEXT_WRAPPED_LINES_H

#include "text/token.h"

namespace grainside::text {

// Takes out each line_end that only wraps a line: no blank line follows, the line has over 40 letters and signs and is
// no heading, a word, a number or a comma stands before, and the next line begins with a lower-case letter, or with any
// word where the line ends in a small word of two letters ('Made in'). The word behind it counts as behind a space, so
// that 'full' at the end of a line and 'grain' on the next are one term. Linear.
void join_wrapped_lines(Tokens& tokens);

}  // namespace grainside::text

#endif  // GRAINSIDE_TEXT_WRAPPED_LINES_H
