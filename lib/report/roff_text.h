// Text of unknown origin in a manual page (man(7) macros, read by groff and mandoc). Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_ROFF_TEXT_H
#define GRAINSIDE_REPORT_ROFF_TEXT_H

#include <string>
#include <string_view>

namespace grainside::report {

// `text` on one line of its own, as roff text: nothing in it is a request, a macro or an escape. Line ends are spaces,
// what a terminal would obey is U+FFFD, characters beyond ASCII are written as \[uXXXX]. Empty text writes nothing.
void append_roff_line(std::string& out, std::string_view text);

// The same in quotes, as one argument of a macro, without a line end: `.SH "..."`.
void append_roff_argument(std::string& out, std::string_view text);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_ROFF_TEXT_H
