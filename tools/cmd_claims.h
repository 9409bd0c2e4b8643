// grainside claims: what listings assert, part by part.
#ifndef GRAINSIDE_TOOLS_CMD_CLAIMS_H
#define GRAINSIDE_TOOLS_CMD_CLAIMS_H

#include <CLI/CLI.hpp>

#include "call_options.h"
#include "run_options.h"

namespace grainside::tools {

struct ClaimsCall {
    SharedOptions shared;
    RunOptions run;
};

// Adds the command; where it is called, `chosen` is set. `app` and `chosen` must outlive the parsing.
void add_claims(CLI::App& app, ChosenCommand& chosen);

// Returns the exit status.
int run_claims(const ClaimsCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_CLAIMS_H
