// Completion in zsh, by its own _arguments.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <iterator>

#include "completion.h"

namespace grainside::tools {
namespace {

constexpr const char* kZshHead = R"sh(#compdef grainside
# Completion of grainside in zsh, written by the tool while it was built: do not edit.
_grainside() {
    # What stands before the command's own words is taken off, so that _arguments sees a call of one program.
    local path=''
    local -a known commands
    known=(@)
    while ((CURRENT > 2)) && [[ -n ${known[(re)${path:+$path }$words[2]]} ]]; do
        path="${path:+$path }$words[2]"
        shift words
        ((CURRENT--))
    done
    case $path in
)sh";

constexpr const char* kZshTail = R"sh(    esac
}
_grainside "$@"
)sh";

// What _arguments reads as the end of a description is kept from it.
std::string zsh_description(const std::string& text) {
    std::string out;
    for (const char c : text) {
        if (c == '[' || c == ']' || c == ':' || c == '\\') out += '\\';
        out += c;
    }
    return out;
}

std::string zsh_action(const CompletedArgument& argument) {
    switch (argument.value) {
        case CompletedValue::none:
            return "";
        case CompletedValue::anything:
            return ":value: ";
        case CompletedValue::files:
            return ":file:_files";
        case CompletedValue::folders:
            return ":folder:_files -/";
        case CompletedValue::words:
            return fmt::format(":word:({})", fmt::join(argument.words, " "));
        case CompletedValue::words_list:
            return fmt::format(":words:_values -s , word {}", fmt::join(argument.words, " "));
    }
    return "";
}

void append_zsh_command(const CompletedCommand& command, std::span<const CompletedCommand> all, std::string& out) {
    auto to = std::back_inserter(out);
    fmt::format_to(to, "        {})\n", shell_quoted(path_text(command)));
    if (!command.commands.empty()) {
        out += "            commands=(\n";
        for (const CompletedCommand& below : all) {
            if (!is_right_below(command, below)) continue;
            fmt::format_to(to, "                {}\n",
                           shell_quoted(below.path.back() + ':' + zsh_description(below.what)));
        }
        out += "            )\n            ((CURRENT == 2)) && _describe -t commands command commands\n";
    }
    out += "            _arguments -S";
    for (const CompletedArgument& option : command.options) {
        for (const std::string& name : option.names) {
            const bool takes = option.value != CompletedValue::none;
            fmt::format_to(to, " \\\n                {}",
                           shell_quoted(fmt::format("*{}{}[{}]{}", name, takes && name.starts_with("--") ? "=" : "",
                                                    zsh_description(option.what), zsh_action(option))));
        }
    }
    if (command.commands.empty() && command.others.value != CompletedValue::none) {
        fmt::format_to(to, " \\\n                {}", shell_quoted('*' + zsh_action(command.others)));
    }
    out += "\n            ;;\n";
}

}  // namespace

void append_zsh_completion(std::span<const CompletedCommand> commands, std::string& out) {
    std::vector<std::string> paths;
    for (const CompletedCommand& command : commands) {
        if (!command.path.empty()) paths.push_back(shell_quoted(path_text(command)));
    }
    const std::string_view head = kZshHead;
    const std::size_t place = head.find('@');
    out += head.substr(0, place);
    fmt::format_to(std::back_inserter(out), "{}", fmt::join(paths, " "));
    out += head.substr(place + 1);
    for (const CompletedCommand& command : commands) append_zsh_command(command, commands, out);
    out += kZshTail;
}

}  // namespace grainside::tools
