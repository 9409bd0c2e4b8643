// grainside rules reference: the whole rule book to read, as a page or as a manual page.
#ifndef GRAINSIDE_TOOLS_CMD_RULES_REFERENCE_H
#define GRAINSIDE_TOOLS_CMD_RULES_REFERENCE_H

#include <CLI/CLI.hpp>
#include <string>

#include "call_options.h"

namespace grainside::tools {

struct ReferenceCall {
    std::string form = "html";  // html, man
    std::string out;            // a file; empty: standard output
    std::string rules_folder;   // empty: the book that is built in
};

// Adds the command to those of `grainside rules`; where it is called, `chosen` is set. Both must outlive the parsing.
void add_rules_reference(CLI::App& group, ChosenCommand& chosen);

// Returns the exit status.
int run_rules_reference(const ReferenceCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_RULES_REFERENCE_H
