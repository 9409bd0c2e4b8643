// Completion in bash 4 and later, without the package bash-completion.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <iterator>

#include "completion.h"

namespace grainside::tools {
namespace {

// What is settled before: `path`, `before` (the word before the current one) and `current`. What a command settles:
// `options`, `kind` of what is to be offered, `words`.
constexpr const char* kBashHead =
    R"sh(# Completion of grainside in bash, written by the tool while it was built: do not edit.
_grainside() {
    local current=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} path='' options='' others='' kind='' words=''
    # '--format=js' comes as three words.
    if [[ $current == = ]]; then
        current=''
    elif [[ $before == = ]]; then
        before=${COMP_WORDS[COMP_CWORD-2]}
    fi
    if ((COMP_CWORD > 1)); then path=${COMP_WORDS[1]}; fi
    if ((COMP_CWORD > 2)); then
        case "$path ${COMP_WORDS[2]}" in
            @) path="$path ${COMP_WORDS[2]}" ;;
        esac
    fi
    case $path in
)sh";

constexpr const char* kBashTail = R"sh(    esac
    COMPREPLY=()
    if [[ $current == -* && -z $kind ]]; then
        kind=words words=$options
    fi
    case ${kind:-$others} in
        words)
            mapfile -t COMPREPLY < <(compgen -W "$words" -- "$current")
            ;;
        words_list)
            local done=''
            if [[ $current == *,* ]]; then done=${current%,*},; fi
            mapfile -t COMPREPLY < <(compgen -P "$done" -W "$words" -- "${current##*,}")
            compopt -o nospace 2>/dev/null
            ;;
        files)
            compopt -o filenames 2>/dev/null
            mapfile -t COMPREPLY < <(compgen -f -- "$current")
            ;;
        folders)
            compopt -o filenames 2>/dev/null
            mapfile -t COMPREPLY < <(compgen -d -- "$current")
            ;;
    esac
    return 0
}
complete -F _grainside grainside
)sh";

const char* bash_kind(CompletedValue value) {
    switch (value) {
        case CompletedValue::none:
        case CompletedValue::anything:
            break;
        case CompletedValue::files:
            return "files";
        case CompletedValue::folders:
            return "folders";
        case CompletedValue::words:
            return "words";
        case CompletedValue::words_list:
            return "words_list";
    }
    return "nothing";
}

void append_bash_command(const CompletedCommand& command, std::string& out) {
    auto to = std::back_inserter(out);
    fmt::format_to(to, "        {})\n", shell_quoted(path_text(command)));
    std::vector<std::string> names;
    for (const CompletedArgument& option : command.options) {
        names.insert(names.end(), option.names.begin(), option.names.end());
    }
    fmt::format_to(to, "            options='{}'\n", fmt::join(names, " "));
    if (!command.commands.empty()) {
        fmt::format_to(to, "            others=words words='{}'\n", fmt::join(command.commands, " "));
    } else {
        fmt::format_to(to, "            others={} words='{}'\n", bash_kind(command.others.value),
                       fmt::join(command.others.words, " "));
    }
    out += "            case $before in\n";
    for (const CompletedArgument& option : command.options) {
        if (option.value == CompletedValue::none) continue;
        fmt::format_to(to, "                {}) kind={} words='{}' ;;\n", fmt::join(option.names, " | "),
                       bash_kind(option.value), fmt::join(option.words, " "));
    }
    out += "            esac\n            ;;\n";
}

}  // namespace

void append_bash_completion(std::span<const CompletedCommand> commands, std::string& out) {
    std::vector<std::string> two_words;
    for (const CompletedCommand& command : commands) {
        if (command.path.size() == 2) two_words.push_back(shell_quoted(path_text(command)));
    }
    const std::string_view head = kBashHead;
    const std::size_t place = head.find("@)");
    out += head.substr(0, place);
    fmt::format_to(std::back_inserter(out), "{}", fmt::join(two_words, " | "));
    out += head.substr(place + 1);
    for (const CompletedCommand& command : commands) append_bash_command(command, out);
    out += kBashTail;
}

}  // namespace grainside::tools
