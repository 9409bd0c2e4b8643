// Going through the dossiers of a call.
#ifndef GRAINSIDE_TOOLS_DOSSIER_RUN_H
#define GRAINSIDE_TOOLS_DOSSIER_RUN_H

#include <CLI/CLI.hpp>
#include <functional>
#include <string>
#include <vector>

#include "call_options.h"
#include "diagnostics.h"
#include "grainside/dossier.h"
#include "grainside/dossier_report.h"
#include "judged_for.h"

namespace grainside::tools {

// What `judge`, `identify`, `plan` and `learn` have in common.
struct DossierOptionsOfCall {
    std::vector<std::string> dossiers;  // at least one
    std::string format = "human";
    std::string colour = "auto";
    std::string rules_folder;
};

// All but the format.
void add_dossiers(CLI::App& command, DossierOptionsOfCall& options);

// Calls `handle` with each dossier that can be read, in order, until it gives false. Of the others every fault is
// reported, and the rest goes on.
void for_each_dossier(const std::vector<std::string>& files, const EvidenceBook& evidence, Diagnostics& diagnostics,
                      const std::function<bool(Dossier&&)>& handle);

// What a command does with the dossiers of a call.
struct DossierSteps {
    // What it writes of one: for people where `view` is not null, else for programs. Gives the worst grade in it.
    std::function<Grade(Judge& judge, const DossierContext& context, const ViewOptions* view, std::string& out)> write;
    // Before the first one, may be empty; what it changes in `judged` counts. False: something is wrong and has been
    // reported.
    std::function<bool(const EvidenceBook& evidence, JudgeOptions& judged, Diagnostics& diagnostics, std::string& out)>
        begin = {};
    // Behind the last one, may be empty. True where the call fails for another reason than a grade.
    std::function<bool(Diagnostics& diagnostics, std::string& out)> end = {};
};

// Loads the books, takes the steps, ends the view, and gives the exit status: 1 where a grade at or above `fail_at` was
// reached.
int run_judging(const DossierOptionsOfCall& options, const JudgedFor& judged_for, DecisionRule decision_rule,
                Grade fail_at, const DossierSteps& steps);

// The end of the help: of the commands that grade nothing, and of the one that does.
extern const char* const kExitStatusOfDossiers;
extern const char* const kExitStatusOfVerdicts;

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_DOSSIER_RUN_H
