// grainside markets: where copy may be published as it stands.
#ifndef GRAINSIDE_TOOLS_CMD_MARKETS_H
#define GRAINSIDE_TOOLS_CMD_MARKETS_H

#include <CLI/CLI.hpp>
#include <string>

#include "call_options.h"
#include "judged_for.h"

namespace grainside::tools {

struct MarketsCall {
    SharedOptions shared;  // format: human, jsonl, csv
    JudgedFor judged_for;  // no markets: all of the book; no day: today
    std::string fail_at = "misleading";
};

// Adds the command; where it is called, `chosen` is set. `app` and `chosen` must outlive the parsing.
void add_markets_command(CLI::App& app, ChosenCommand& chosen);

// Returns the exit status.
int run_markets(const MarketsCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_MARKETS_H
