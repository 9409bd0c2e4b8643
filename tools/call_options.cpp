#include "call_options.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <utility>

#include "input_files.h"

namespace grainside::tools {

const char* const kExitStatusOfChecks =
    "Exit status:\n"
    "  0  done, and no finding is at or above the grade of --fail-at\n"
    "  1  done, and one is, or with --no-stale-concessions a concession is stale\n"
    "  2  an error: a wrong call, a file or record that cannot be read (the others\n"
    "     are checked all the same), output that cannot be written";

CLI::Validator one_of(const std::vector<std::string_view>& words) {
    const auto check = [words](const std::string& word) -> std::string {
        if (std::find(words.begin(), words.end(), word) != words.end()) return {};
        return fmt::format("'{}' is none of {}", word, fmt::join(words, ", "));
    };
    return CLI::Validator(check, "", fmt::format("{}", fmt::join(words, " ")));
}

void add_inputs(CLI::App& command, SharedOptions& options) {
    command
        .add_option("inputs", options.inputs,
                    "Files to read; '-' or none: standard input. A folder is\nall files below it that hold listings by "
                    "their ending;\na pattern (* ? [ ], and ** for any folders) is what it\nmatches. Each file is "
                    "read once; gzip and zstd are\nunpacked")
        ->type_name("FILE");
    command
        .add_option("--files-from", options.files_from,
                    "Read also the files named in this one, one a line; '-':\nstandard input")
        ->type_name("FILE");
    command
        .add_option("--input", options.input_format,
                    "What the inputs are: text, markdown, json, jsonl, csv,\ntsv, html or auto (default: by file name; "
                    "standard "
                    "input\nby its first byte, which does not tell a table)")
        ->type_name("KIND")
        ->check(one_of({"text", "markdown", "json", "jsonl", "csv", "tsv", "html", "auto"}));
    add_table_options(command, options.table);
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
    if (name == "csv") return InputFormat::csv;
    if (name == "tsv") return InputFormat::tsv;
    if (name == "html") return InputFormat::html;
    return InputFormat::automatic;
}

ReadOptions read_options_of(const SharedOptions& options) {
    ReadOptions read;
    read.format = input_format_named(options.input_format);
    set_table_options(options.table, read);
    return read;
}

std::vector<std::string> inputs_of(const SharedOptions& options, Diagnostics& diagnostics) {
    if (options.inputs.empty() && options.files_from.empty()) return {"-"};
    std::vector<std::string> named = options.inputs;
    if (!options.files_from.empty()) {
        const std::vector<std::string> listed = read_input_list(options.files_from, diagnostics);
        named.insert(named.end(), listed.begin(), listed.end());
    }
    return expand_inputs(named, diagnostics);
}

}  // namespace grainside::tools
