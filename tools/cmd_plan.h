// grainside plan: which tests to make next.
#ifndef GRAINSIDE_TOOLS_CMD_PLAN_H
#define GRAINSIDE_TOOLS_CMD_PLAN_H

#include <CLI/CLI.hpp>

#include "call_options.h"
#include "dossier_run.h"
#include "judged_for.h"

namespace grainside::tools {

struct PlanCall {
    DossierOptionsOfCall shared;
    JudgedFor judged_for;
};

// Adds the command; where it is called, `chosen` is set. `app` and `chosen` must outlive the parsing.
void add_plan(CLI::App& app, ChosenCommand& chosen);

// Returns the exit status.
int run_plan(const PlanCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_PLAN_H
