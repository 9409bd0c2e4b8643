// grainside reword: listings with their findings mended.
#ifndef GRAINSIDE_TOOLS_CMD_REWORD_H
#define GRAINSIDE_TOOLS_CMD_REWORD_H

#include <CLI/CLI.hpp>
#include <string>

#include "call_options.h"
#include "judged_for.h"
#include "proof_options.h"

namespace grainside::tools {

struct RewordCall {
    SharedOptions shared;
    JudgedFor judged_for;
    ProofOptions proofs;
    std::string fail_at = "misleading";
    std::string out;    // empty: no file
    bool diff = false;  // nothing but the difference
    bool leave_out_unproven = false;
};

// Adds the command; where it is called, `chosen` is set. `app` and `chosen` must outlive the parsing.
void add_reword(CLI::App& app, ChosenCommand& chosen);

// Returns the exit status.
int run_reword(const RewordCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_REWORD_H
