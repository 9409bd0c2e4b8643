// grainside check: the findings of listings.
#ifndef GRAINSIDE_TOOLS_CMD_CHECK_H
#define GRAINSIDE_TOOLS_CMD_CHECK_H

#include <CLI/CLI.hpp>
#include <string>

#include "call_options.h"
#include "concession_options.h"
#include "judged_for.h"
#include "proof_options.h"
#include "run_options.h"

namespace grainside::tools {

struct CheckCall {
    SharedOptions shared;
    RunOptions run;
    JudgedFor judged_for;
    ConcessionOptions concessions;
    ProofOptions proofs;
    std::string fail_at = "misleading";
    bool quiet = false;  // nothing on standard output
};

// Adds the command; where it is called, `chosen` is set. `app` and `chosen` must outlive the parsing.
void add_check(CLI::App& app, ChosenCommand& chosen);

// Returns the exit status.
int run_check(const CheckCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_CHECK_H
