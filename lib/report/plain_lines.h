// Laying out text of unknown origin in terminal lines. Everything that comes out is inert (document/inert_text.h), runs
// of white space are one space. Widths and indents are in terminal cells. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_PLAIN_LINES_H
#define GRAINSIDE_REPORT_PLAIN_LINES_H

#include <cstddef>
#include <string>
#include <string_view>

namespace grainside::report {

// `text` on one line of at most `cells`; of a longer one the beginning and the end with "..." between them.
// REQUIRES: cells >= 4.
std::string one_line(std::string_view text, std::size_t cells);

// `text` broken at its spaces into lines of at most `width` cells, each ended by a newline. The first one continues
// what stands on the line already, `indent` cells; the others are indented by as many. A word wider than a line is
// broken. REQUIRES: width >= indent + 8.
void append_wrapped(std::string& out, std::string_view text, std::size_t indent, std::size_t width);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_PLAIN_LINES_H
