// grainside learn: what confirmed dossiers teach, and how far beliefs can be trusted.
#ifndef GRAINSIDE_TOOLS_CMD_LEARN_H
#define GRAINSIDE_TOOLS_CMD_LEARN_H

#include <CLI/CLI.hpp>

#include "call_options.h"
#include "dossier_run.h"

namespace grainside::tools {

struct LearnCall {
    DossierOptionsOfCall shared;
    double weight = 20;  // readings that the book's figures are worth
};

// Adds the command; where it is called, `chosen` is set. `app` and `chosen` must outlive the parsing.
void add_learn(CLI::App& app, ChosenCommand& chosen);

// Returns the exit status.
int run_learn(const LearnCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_LEARN_H
