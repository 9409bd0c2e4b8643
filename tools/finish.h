// The end of every command: what is left to write, and the exit status.
#ifndef GRAINSIDE_TOOLS_FINISH_H
#define GRAINSIDE_TOOLS_FINISH_H

#include "diagnostics.h"
#include "output.h"

namespace grainside::tools {

// Writes the rest of `output`, reports where that fails, and gives the exit status.
int finish(Output& output, Diagnostics& diagnostics, bool reached);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_FINISH_H
