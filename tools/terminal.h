// How to write for the one who reads standard output.
#ifndef GRAINSIDE_TOOLS_TERMINAL_H
#define GRAINSIDE_TOOLS_TERMINAL_H

#include <string_view>

#include "grainside/report.h"

namespace grainside::tools {

// `colour` is auto, always or never. With auto: on a terminal that is not "dumb", unless NO_COLOR is set to anything
// (https://no-color.org). The width is the terminal's, within 40 and 120 cells; elsewhere 80, so that files and tests
// come out the same on every machine.
ViewOptions view_options(std::string_view colour);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_TERMINAL_H
