// Days as rules and dossiers count them: YYYY-MM-DD of the proleptic Gregorian calendar (ISO 8601). Thread-safe.
#ifndef GRAINSIDE_DOCUMENT_DAY_H
#define GRAINSIDE_DOCUMENT_DAY_H

#include <string_view>

namespace grainside::document {

// Ten characters, four digits, two and two with hyphens between them.
bool is_written_as_day(std::string_view text) noexcept;

// True for what is written as a day and names one that exists, years 0001 to 9999.
bool is_day(std::string_view text) noexcept;

}  // namespace grainside::document

#endif  // GRAINSIDE_DOCUMENT_DAY_H
