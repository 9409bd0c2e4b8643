// Days as rules count them: YYYY-MM-DD of the proleptic Gregorian calendar (ISO 8601).
#ifndef GRAINSIDE_TOOLS_CALENDAR_H
#define GRAINSIDE_TOOLS_CALENDAR_H

#include <string>

#include "document/day.h"

namespace grainside::tools {

// The day of this machine's clock in its own time zone.
std::string today();

using document::is_day;

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CALENDAR_H
