// grainside rules explain: one rule in sentences.
#ifndef GRAINSIDE_TOOLS_CMD_RULES_EXPLAIN_H
#define GRAINSIDE_TOOLS_CMD_RULES_EXPLAIN_H

#include <CLI/CLI.hpp>
#include <string>

#include "call_options.h"

namespace grainside::tools {

struct ExplainCall {
    std::string rule;
    std::string colour = "auto";  // auto, always, never
    std::string rules_folder;     // empty: the book that is built in
};

// Adds the command to those of `grainside rules`; where it is called, `chosen` is set. Both must outlive the parsing.
void add_rules_explain(CLI::App& group, ChosenCommand& chosen);

// Returns the exit status.
int run_rules_explain(const ExplainCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_RULES_EXPLAIN_H
