// The options that several commands share, and how a command is chosen.
#ifndef GRAINSIDE_TOOLS_CALL_OPTIONS_H
#define GRAINSIDE_TOOLS_CALL_OPTIONS_H

#include <CLI/CLI.hpp>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "diagnostics.h"
#include "grainside/listing_reader.h"
#include "table_options.h"

namespace grainside::tools {

// Parsing the command line only validates and sets this; what it holds gives the exit status when it is called.
using ChosenCommand = std::function<int()>;

struct SharedOptions {
    std::vector<std::string> inputs;    // paths and patterns, "-" is standard input; none: standard input
    std::string files_from;             // a file with more of them, one a line; empty: none
    std::string input_format = "auto";  // text, markdown, json, jsonl, csv, tsv, html, auto
    TableOptions table;
    std::string format = "human";  // human, jsonl, sarif
    std::string colour = "auto";   // auto, always, never
    std::string rules_folder;      // empty: the book that is built in
};

void add_inputs(CLI::App& command, SharedOptions& options);
void add_format(CLI::App& command, std::string& format, const std::string& what_jsonl_is);
// The same for commands whose findings CI shows: also "sarif".
void add_format_with_sarif(CLI::App& command, std::string& format, const std::string& what_jsonl_is);
void add_colour(CLI::App& command, std::string& when);
void add_rules_folder(CLI::App& command, std::string& folder);

// Refuses all but the words given, and says which there are. They are its name, too, where shells learn them
// (completion_facts.h).
CLI::Validator one_of(const std::vector<std::string_view>& words);

InputFormat input_format_named(std::string_view name);
ReadOptions read_options_of(const SharedOptions& options);
// The files that the call names, folders and patterns expanded (input_files.h).
std::vector<std::string> inputs_of(const SharedOptions& options, Diagnostics& diagnostics);

// What every command's help says at its end.
extern const char* const kExitStatusOfChecks;

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CALL_OPTIONS_H
