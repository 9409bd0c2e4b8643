// Completion in fish: a line for each command and option.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <iterator>

#include "completion.h"

namespace grainside::tools {
namespace {

// When a line counts: all words of the path are there, and where commands are offered none of those below it.
std::string fish_condition(const CompletedCommand& command, bool offers_commands) {
    std::string condition;
    for (const std::string& word : command.path) {
        condition += fmt::format("{}__fish_seen_subcommand_from {}", condition.empty() ? "" : "; and ", word);
    }
    if (!offers_commands) return condition;
    if (command.path.empty()) return "__fish_use_subcommand";
    return fmt::format("{}; and not __fish_seen_subcommand_from {}", condition, fmt::join(command.commands, " "));
}

void append_fish_value(const CompletedArgument& argument, std::string& out) {
    auto to = std::back_inserter(out);
    switch (argument.value) {
        case CompletedValue::none:
            break;
        case CompletedValue::anything:
            out += " -x";
            break;
        case CompletedValue::files:
            out += " -r -F";
            break;
        case CompletedValue::folders:
            out += " -x -a '(__fish_complete_directories)'";
            break;
        case CompletedValue::words:
            fmt::format_to(to, " -x -a '{}'", fmt::join(argument.words, " "));
            break;
        case CompletedValue::words_list:
            fmt::format_to(to, " -x -a '(__fish_append , {})'", fmt::join(argument.words, " "));
            break;
    }
}

void append_fish_command(const CompletedCommand& command, std::string& out) {
    auto to = std::back_inserter(out);
    // Options of the tool itself stand before any command.
    const std::string condition = fish_condition(command, command.path.empty());
    for (const CompletedArgument& option : command.options) {
        fmt::format_to(to, "complete -c grainside -n {}", shell_quoted(condition));
        for (const std::string& name : option.names) {
            const bool is_long = name.starts_with("--");
            fmt::format_to(to, " {} {}", is_long ? "-l" : "-s", name.substr(is_long ? 2 : 1));
        }
        append_fish_value(option, out);
        fmt::format_to(to, " -d {}\n", shell_quoted(option.what));
    }
    switch (command.others.value) {
        case CompletedValue::files:
        case CompletedValue::folders:
            fmt::format_to(to, "complete -c grainside -n {} -F\n", shell_quoted(condition));
            break;
        case CompletedValue::words:
        case CompletedValue::words_list:
            fmt::format_to(to, "complete -c grainside -n {} -a '{}'\n", shell_quoted(condition),
                           fmt::join(command.others.words, " "));
            break;
        case CompletedValue::none:
        case CompletedValue::anything:
            break;
    }
}

}  // namespace

void append_fish_completion(std::span<const CompletedCommand> commands, std::string& out) {
    out += "# Completion of grainside in fish, written by the tool while it was built: do not edit.\n";
    out += "complete -c grainside -f\n";
    for (const CompletedCommand& command : commands) {
        for (const CompletedCommand& below : commands) {
            if (!is_right_below(command, below)) continue;
            fmt::format_to(std::back_inserter(out), "complete -c grainside -n {} -a {} -d {}\n",
                           shell_quoted(fish_condition(command, true)), below.path.back(), shell_quoted(below.what));
        }
        append_fish_command(command, out);
    }
}

}  // namespace grainside::tools
