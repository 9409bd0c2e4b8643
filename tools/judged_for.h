// For which markets and which day rules and limits are asked, as options that several commands share.
#ifndef GRAINSIDE_TOOLS_JUDGED_FOR_H
#define GRAINSIDE_TOOLS_JUDGED_FOR_H

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "diagnostics.h"
#include "grainside/checker.h"
#include "grainside/finding.h"

namespace grainside::tools {

struct JudgedFor {
    std::vector<std::string> markets;  // as written; empty: the region that the listing states
    std::string on;                    // YYYY-MM-DD; empty: the default of the command
};

// `default_day` ends the help's sentence: "today".
void add_judged_for(CLI::App& command, JudgedFor& options, const std::string& default_day);
void add_decision_rule(CLI::App& command, std::string& rule);
// An option that takes a day as YYYY-MM-DD.
void add_day(CLI::App& command, const std::string& name, std::string& day, const std::string& help);
void add_fail_at(CLI::App& command, std::string& grade);

// An option that keeps what the book has for these markets only; `what`: "rules made for".
CLI::Option* add_made_for(CLI::App& command, std::vector<std::string>& markets, const std::string& what);

// An option that asks some markets of the book instead of all.
void add_asked_markets(CLI::App& command, std::vector<std::string>& markets);

// `asked` in the letters of the book, each once; unknown ones are reported and left out.
std::vector<std::string> known_markets(const std::vector<std::string>& asked, const RuleBook& book,
                                       Diagnostics& diagnostics);

// With the markets in the letters of the book; unknown ones are reported.
CheckOptions check_options_of(const JudgedFor& asked, const RuleBook& book, Diagnostics& diagnostics);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_JUDGED_FOR_H
