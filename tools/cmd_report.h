// grainside report: the whole report of dossiers, as a page, Markdown, JSON or a table.
#ifndef GRAINSIDE_TOOLS_CMD_REPORT_H
#define GRAINSIDE_TOOLS_CMD_REPORT_H

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "call_options.h"
#include "judged_for.h"
#include "proof_options.h"

namespace grainside::tools {

struct ReportCall {
    std::vector<std::string> dossiers;  // at least one
    std::string format;                 // html, markdown, json, csv; empty: by the name of `out`, else html
    std::string out;                    // one file for all; empty: standard output
    std::string into;                   // a folder, for one file a dossier; empty: none
    JudgedFor judged_for;
    std::string decision_rule = "both-guarded";
    ProofOptions proofs;
    std::string rules_folder;
};

// Adds the command; where it is called, `chosen` is set. `app` and `chosen` must outlive the parsing.
void add_report(CLI::App& app, ChosenCommand& chosen);

// Returns the exit status.
int run_report(const ReportCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_REPORT_H
