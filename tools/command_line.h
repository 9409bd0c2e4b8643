// The command line as a whole: which command, and what is said of a wrong call.
#ifndef GRAINSIDE_TOOLS_COMMAND_LINE_H
#define GRAINSIDE_TOOLS_COMMAND_LINE_H

namespace grainside::tools {

// Parses, runs the command and returns the exit status. Only memory that runs out is thrown.
int run_command_line(int argc, const char* const* argv);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_COMMAND_LINE_H
