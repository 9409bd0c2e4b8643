#include "call_options.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <utility>

namespace grainside::tools {

const char* const kExitStatusOfChecks =
    "Exit status:\n"
    "  0  done, and no finding is at or above the grade of --fail-at\n"
    "  1  done, and one is, or with --no-stale-concessions a concession is stale\n"
    "  2  an error: a wrong call, a file or record that cannot be read (the others\n"
    "     are checked all the same), output that cannot be written";

CLI::Validator one_of(std::vector<std::string_view> words) {
    const auto check = [words = std::move(words)](const std::string& word) -> std::string {
        if (std::find(words.begin(), words.end(), word) != words.end()) return {};
        return fmt::format("'{}' is none of {}", word, fmt::join(words, ", "));
    };
    return CLI::Validator(check, "");
}

void add_inputs(CLI::App& command, SharedOptions& options) {
    command.add_option("inputs", options.inputs, "Files to read; '-' or none: standard input")->type_name("FILE");
    command
        .add_option("--input", options.input_format,
                    "What the inputs are: text, markdown, json, jsonl, html\n"
                    "or auto (default: by file name; standard input by\n"
                    "its first byte)")
        ->type_name("KIND")
        ->check(one_of({"text", "markdown", "json", "jsonl", "html", "auto"}));
}

void add_format(CLI::App& command, std::string& format, const std::string& what_jsonl_is) {
    command.add_option("--format", format, "human (default), or jsonl: " + what_jsonl_is)
        ->type_name("FORMAT")
        ->check(one_of({"human", "jsonl"}));
}

void add_format_with_sarif(CLI::App& command, std::string& format, const std::string& what_jsonl_is) {
    command
        .add_option("--format", format,
                    "human (default), jsonl: " + what_jsonl_is + ", or\nsarif: one SARIF 2.1.0 log of the whole call")
        ->type_name("FORMAT")
        ->check(one_of({"human", "jsonl", "sarif"}));
}

void add_colour(CLI::App& command, std::string& when) {
    command
        .add_option("--colour", when,
                    "auto (default), always or never; auto colours on a\n"
                    "terminal unless NO_COLOR is set")
        ->type_name("WHEN")
        ->check(one_of({"auto", "always", "never"}));
}

void add_rules_folder(CLI::App& command, std::string& folder) {
    command.add_option("--rules", folder, "Read the rule book from this folder, not the built-in one")
        ->type_name("DIR");
}

InputFormat input_format_named(std::string_view name) {
    if (name == "text") return InputFormat::text;
    if (name == "markdown") return InputFormat::markdown;
    if (name == "json") return InputFormat::json;
    if (name == "jsonl") return InputFormat::json_lines;
    if (name == "html") return InputFormat::html;
    return InputFormat::automatic;
}

}  // namespace grainside::tools
