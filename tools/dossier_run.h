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

namespace grainside::tools {

// What `judge`, `identify`, `plan` and `learn` have in common.
struct DossierOptionsOfCall {
    std::vector<std::string> dossiers;  // at least one
    std::string format = "human";
    std::string colour = "auto";
    std::string rules_folder;
};

void add_dossiers(CLI::App& command, DossierOptionsOfCall& options, const std::string& what_jsonl_is);

// Calls `handle` with each dossier that can be read, in order, until it gives false. Of the others every fault is
// reported, and the rest goes on.
void for_each_dossier(const std::vector<std::string>& files, const EvidenceBook& evidence, Diagnostics& diagnostics,
                      const std::function<bool(Dossier&&)>& handle);

// The end of the help: of the commands that grade nothing, and of the one that does.
extern const char* const kExitStatusOfDossiers;
extern const char* const kExitStatusOfVerdicts;

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_DOSSIER_RUN_H
