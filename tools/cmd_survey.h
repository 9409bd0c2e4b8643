// grainside survey: of many listings, how often words are flagged, and by whom.
#ifndef GRAINSIDE_TOOLS_CMD_SURVEY_H
#define GRAINSIDE_TOOLS_CMD_SURVEY_H

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "call_options.h"
#include "judged_for.h"
#include "proof_options.h"
#include "run_options.h"

namespace grainside::tools {

struct SurveyCall {
    SharedOptions shared;
    JudgedFor judged_for;
    ProofOptions proofs;
    RunOptions run;
    std::string at = "misleading";
    unsigned confidence = 95;  // percent
    double within = 10;        // percentage points
    unsigned top = 10;
    std::vector<std::string> by;  // empty: all
    std::string out;              // a file; empty: standard output
};

// Adds the command; where it is called, `chosen` is set. `app` and `chosen` must outlive the parsing.
void add_survey(CLI::App& app, ChosenCommand& chosen);

// Returns the exit status: 0 or 2, because a survey is no gate.
int run_survey(const SurveyCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_SURVEY_H
