// grainside desk: a local page for people without a terminal.
#ifndef GRAINSIDE_TOOLS_CMD_DESK_H
#define GRAINSIDE_TOOLS_CMD_DESK_H

#include <CLI/CLI.hpp>
#include <string>

#include "call_options.h"
#include "judged_for.h"

namespace grainside::tools {

struct DeskCall {
    std::string folder = ".";
    int port = 0;  // 0: any that is free
    JudgedFor judged_for;
    std::string rules_folder;
};

// Adds the command; where it is called, `chosen` is set. `app` and `chosen` must outlive the parsing.
void add_desk(CLI::App& app, ChosenCommand& chosen);

// Serves until it is interrupted. Returns the exit status.
int run_desk(const DeskCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_DESK_H
