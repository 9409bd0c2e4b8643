// grainside judge: the claims of a dossier against what its tests showed.
#ifndef GRAINSIDE_TOOLS_CMD_JUDGE_H
#define GRAINSIDE_TOOLS_CMD_JUDGE_H

#include <CLI/CLI.hpp>
#include <string>

#include "call_options.h"
#include "concession_options.h"
#include "dossier_run.h"
#include "judged_for.h"
#include "proof_options.h"

namespace grainside::tools {

struct JudgeCall {
    DossierOptionsOfCall shared;
    JudgedFor judged_for;
    ConcessionOptions concessions;
    ProofOptions proofs;
    std::string decision_rule = "both-guarded";
    std::string fail_at = "misleading";
};

// Adds the command; where it is called, `chosen` is set. `app` and `chosen` must outlive the parsing.
void add_judge(CLI::App& app, ChosenCommand& chosen);

// Returns the exit status.
int run_judge(const JudgeCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_JUDGE_H
