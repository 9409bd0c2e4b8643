// Text of unknown origin in a cell of CSV (RFC 4180). Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_CSV_TEXT_H
#define GRAINSIDE_REPORT_CSV_TEXT_H

#include <string>
#include <string_view>
#include <vector>

namespace grainside::report {

// One record, ended by CRLF (2.1). Each cell in quotes where it needs them (2.6, 2.7). A spreadsheet takes a cell that
// begins with '=', '+', '-' or '@' for a formula, also behind blanks and in the letters of another width: an apostrophe
// in front keeps it a text. Line ends are spaces, the rest is as document::printable_text has it.
void append_csv_record(std::string& out, const std::vector<std::string>& cells);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_CSV_TEXT_H
