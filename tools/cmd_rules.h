// grainside rules: what the book holds, and whether it proves itself.
#ifndef GRAINSIDE_TOOLS_CMD_RULES_H
#define GRAINSIDE_TOOLS_CMD_RULES_H

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "call_options.h"

namespace grainside::tools {

struct RulesCall {
    SharedOptions shared;              // format and rules_folder
    std::string rule;                  // of show, and of prove where one is named
    std::string group;                 // of list; empty: every group
    std::vector<std::string> markets;  // of list, as written; empty: all rules
};

// Adds the commands list, show, prove, examine, explain and reference; where one is called, `chosen` is set. `app` and
// `chosen` must outlive the parsing.
void add_rules(CLI::App& app, ChosenCommand& chosen);

// Each returns the exit status.
int run_rules_list(const RulesCall& call);
int run_rules_show(const RulesCall& call);
int run_rules_prove(const RulesCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_RULES_H
