// grainside identify: what each part of a sample is, by its readings.
#ifndef GRAINSIDE_TOOLS_CMD_IDENTIFY_H
#define GRAINSIDE_TOOLS_CMD_IDENTIFY_H

#include <CLI/CLI.hpp>

#include "call_options.h"
#include "dossier_run.h"

namespace grainside::tools {

struct IdentifyCall {
    DossierOptionsOfCall shared;
};

// Adds the command; where it is called, `chosen` is set. `app` and `chosen` must outlive the parsing.
void add_identify(CLI::App& app, ChosenCommand& chosen);

// Returns the exit status.
int run_identify(const IdentifyCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_IDENTIFY_H
