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

// With the markets in the letters of the book; unknown ones are reported.
CheckOptions check_options_of(const JudgedFor& asked, const RuleBook& book, Diagnostics& diagnostics);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_JUDGED_FOR_H
