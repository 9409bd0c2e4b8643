// Which character stands between the values of a table.
#ifndef GRAINSIDE_LISTING_TABLE_SEPARATOR_H
#define GRAINSIDE_LISTING_TABLE_SEPARATOR_H

#include <optional>
#include <string_view>

#include "listing/byte_source.h"

namespace grainside::listing {

// Those that a table may have. No other character can stand between values without being common within them.
inline constexpr std::string_view kTableSeparators = ",;\t|:";

// Of a table of comma-separated values, by its first row outside of quotes, which is read but not consumed: the comma
// if it has one, else a semicolon (spreadsheets where the comma is the decimal sign), else a tab, else the comma. Looks
// through 1 MiB at most.
char separator_of(ByteSource& source);

// Passes over a first line that is nothing but sep= and a character, which spreadsheets write for each other ("sep=;",
// in any case of letters, in double quotes or not), and gives the character, whatever it is. Nothing, and nothing
// consumed, where the first line is another one.
std::optional<char> take_separator_line(ByteSource& source);

}  // namespace grainside::listing

#endif  // GRAINSIDE_LISTING_TABLE_SEPARATOR_H
