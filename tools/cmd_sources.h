// grainside sources: what the book stands on.
#ifndef GRAINSIDE_TOOLS_CMD_SOURCES_H
#define GRAINSIDE_TOOLS_CMD_SOURCES_H

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "call_options.h"

namespace grainside::tools {

struct SourcesCall {
    std::string source;                // empty: all
    std::vector<std::string> markets;  // as written; empty: all
    std::string format = "human";      // human, jsonl
    std::string colour = "auto";       // auto, always, never
    std::string rules_folder;          // empty: the book that is built in
};

// Adds the command; where it is called, `chosen` is set. `app` and `chosen` must outlive the parsing.
void add_sources(CLI::App& app, ChosenCommand& chosen);

// Returns the exit status.
int run_sources(const SourcesCall& call);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CMD_SOURCES_H
