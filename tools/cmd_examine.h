// grainside rules examine: whether the rules of a book get on with one another, and what its texts have tried.
#ifndef GRAINSIDE_TOOLS_CMD_EXAMINE_H
#define GRAINSIDE_TOOLS_CMD_EXAMINE_H

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "call_options.h"

namespace grainside::tools {

struct ExamineCall {
    SharedOptions shared;           // format and rules_folder
    std::string rule;               // only this one; empty: all
    std::vector<std::string> over;  // listings as `check` reads them, and dossiers
    bool coverage = false;          // instead of remarks
};

// Adds the command to the group `rules`; where it is called, `chosen` is set. Both must outlive the parsing.
void add_examine(CLI::App& group, ChosenCommand& chosen);

// Returns the exit status.
int run_examine(const ExamineCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_EXAMINE_H
