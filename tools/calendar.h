// Days as rules count them: YYYY-MM-DD of the proleptic Gregorian calendar (ISO 8601).
#ifndef GRAINSIDE_TOOLS_CALENDAR_H
#define GRAINSIDE_TOOLS_CALENDAR_H

#include <string>
#include <string_view>

namespace grainside::tools {

// The day of this machine's clock in its own time zone.
std::string today();

// True for ten characters that name a day which exists, years 0001 to 9999.
bool is_day(std::string_view text) noexcept;

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CALENDAR_H
