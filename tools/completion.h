// Completion of calls, for the shells: scripts that the build writes by the built tool (`--completion SHELL`, which no
// help shows) and that are installed where each shell looks for them.
#ifndef GRAINSIDE_TOOLS_COMPLETION_H
#define GRAINSIDE_TOOLS_COMPLETION_H

#include <span>
#include <string>

#include "completion_facts.h"

namespace grainside::tools {

// Each appends the whole script. Words of commands are ours or ids of the book, and hold no blank or quote;
// descriptions are quoted.
void append_bash_completion(std::span<const CompletedCommand> commands, std::string& out);
void append_zsh_completion(std::span<const CompletedCommand> commands, std::string& out);
void append_fish_completion(std::span<const CompletedCommand> commands, std::string& out);

// `text` between single quotes, as all three shells read it.
std::string shell_quoted(const std::string& text);

// Whether `below` is a command of `command`.
bool is_right_below(const CompletedCommand& command, const CompletedCommand& below);

// The words of a command behind the tool's name: "rules list".
std::string path_text(const CompletedCommand& command);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_COMPLETION_H
