// Text of unknown origin in Markdown (CommonMark 0.31, with the tables of GitHub's dialect). Thread-safe.
#ifndef GRAINSIDE_REPORT_MARKDOWN_TEXT_H
#define GRAINSIDE_REPORT_MARKDOWN_TEXT_H

#include <string>
#include <string_view>

namespace grainside::report {

// `text` as it shall be read, on one line: what Markdown or HTML would obey is escaped, also addresses that a reader
// would turn into links; line ends are spaces, the rest is as document::printable_text has it.
// `begins_line`: it may stand where a heading, a list or code would begin; false for what follows other text.
std::string markdown_text(std::string_view text, bool begins_line = true);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_MARKDOWN_TEXT_H
