// What a shell can complete of a call: the commands, their options, and what stands behind each. Read from the
// description that the command line is parsed by, so that the two cannot differ.
#ifndef GRAINSIDE_TOOLS_COMPLETION_FACTS_H
#define GRAINSIDE_TOOLS_COMPLETION_FACTS_H

#include <CLI/CLI.hpp>
#include <cstdint>
#include <string>
#include <vector>

#include "grainside/rule_book.h"

namespace grainside::tools {

enum class CompletedValue : std::uint8_t {
    none,      // a flag: nothing stands behind it
    anything,  // a number, a day, a text: nothing to offer
    files,
    folders,
    words,      // one of `words`
    words_list  // some of them, with commas between them
};

struct CompletedArgument {
    std::vector<std::string> names;  // "-h", "--help"; empty for what has no name
    std::string what;                // one short sentence
    CompletedValue value = CompletedValue::none;
    std::vector<std::string> words;
};

struct CompletedCommand {
    std::vector<std::string> path;  // empty for the tool itself, else {"rules", "list"}
    std::string what;
    std::vector<CompletedArgument> options;
    CompletedArgument others;           // what stands without a name
    std::vector<std::string> commands;  // the names of those below it
};

// In the order in which they were added, each before those below it. Markets, rules and sources are those of `book`.
std::vector<CompletedCommand> completed_commands(CLI::App& app, const RuleBook& book);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_COMPLETION_FACTS_H
