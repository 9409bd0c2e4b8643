// grainside edit: a server of the Language Server Protocol on standard input and output.
#ifndef GRAINSIDE_TOOLS_CMD_EDIT_H
#define GRAINSIDE_TOOLS_CMD_EDIT_H

#include <CLI/CLI.hpp>
#include <cstdint>
#include <string>

#include "call_options.h"
#include "judged_for.h"

namespace grainside::tools {

struct EditCall {
    std::string rules_folder;  // empty: the book that is built in
    JudgedFor judged_for;
    std::string concessions;          // empty: concessions.yaml in the workspace's root
    bool stdio = false;               // the only way there is
    std::int64_t client_process = 0;  // 0: the client says it, or not
};

void add_edit(CLI::App& app, ChosenCommand& chosen);

// Returns the exit status.
int run_edit(const EditCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_EDIT_H
