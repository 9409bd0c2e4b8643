#include "command_line.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <optional>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "cmd_check.h"
#include "cmd_claims.h"
#include "cmd_desk.h"
#include "cmd_identify.h"
#include "cmd_judge.h"
#include "cmd_learn.h"
#include "cmd_markets.h"
#include "cmd_plan.h"
#include "cmd_price.h"
#include "cmd_report.h"
#include "cmd_reword.h"
#include "cmd_rules.h"
#include "cmd_sources.h"
#include "cmd_survey.h"
#include "diagnostics.h"
#include "document/faults.h"
#include "finish.h"
#include "grainside/version.h"
#include "load_book.h"
#include "output.h"

namespace grainside::tools {
namespace {

constexpr std::size_t kHelpColumn = 24;

constexpr const char* kFooter =
    "`grainside COMMAND --help` has examples and the exit statuses of each command.\n"
    "A finding is no legal advice; local law and licensed practice decide.";

int print_version() {
    Diagnostics diagnostics;
    Output output;
    if (const std::optional<RuleBook> book = load_book({}, diagnostics)) {
        output.text() =
            fmt::format("grainside {}\nrule book {}: {} rules, {} concepts, {} term forms\n", kVersion, book->digest(),
                        book->rules().size(), book->concept_count(), book->term_form_count());
    }
    return finish(output, diagnostics, false);
}

// "grainside rules show", and the innermost command itself.
const CLI::App& innermost(const CLI::App& app, std::string& path) {
    const CLI::App* command = &app;
    path = app.get_name();
    while (!command->get_subcommands().empty()) {
        command = command->get_subcommands().front();
        path += ' ' + command->get_name();
    }
    return *command;
}

// For `--formt`: the option that was probably meant.
std::string_view near_option(const CLI::App& command, const CLI::App& app, std::vector<std::string>& names) {
    for (const CLI::Option* option : command.get_options()) {
        for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
    }
    const std::vector<std::string_view> candidates(names.begin(), names.end());
    for (const std::string& word : app.remaining(true)) {
        if (!word.starts_with("--")) continue;
        const std::string_view name = std::string_view(word).substr(0, word.find('='));
        if (const std::string_view near = document::nearest(name, candidates); !near.empty()) return near;
    }
    return {};
}

int report_wrong_call(const CLI::App& app, const CLI::ParseError& error) {
    Diagnostics diagnostics;
    Output output;
    std::string path;
    const CLI::App& command = innermost(app, path);
    std::vector<std::string> names;
    const std::string_view near = near_option(command, app, names);
    diagnostics.error(error.what(),
                      near.empty() ? fmt::format("see `{} --help`", path) : fmt::format("did you mean `{}`?", near));
    return finish(output, diagnostics, false);
}

int print_help(const CLI::App& app, const CLI::ParseError& request) {
    Diagnostics diagnostics;
    Output output;
    std::ostringstream text;
    std::ostringstream unused;
    app.exit(request, text, unused);
    output.text() = text.str();
    return finish(output, diagnostics, false);
}

// CLI11 would only say that an argument was not expected.
std::optional<int> refuse_unknown_command(const CLI::App& app, int argc, const char* const* argv) {
    if (argc < 2) return std::nullopt;
    const std::string word = argv[1];
    std::vector<std::string_view> names;
    for (const CLI::App* command : app.get_subcommands(nullptr)) names.push_back(command->get_name());
    if (word.starts_with('-')) return std::nullopt;
    for (const std::string_view name : names) {
        if (name == word) return std::nullopt;
    }
    Diagnostics diagnostics;
    Output output;
    const std::string near = document::suggestion(word, names);
    diagnostics.error("there is no command '" + word + "'", near.empty() ? "see `grainside --help`" : near);
    return finish(output, diagnostics, false);
}

}  // namespace

int run_command_line(int argc, const char* const* argv) {
    CLI::App app("Checks what listings of leather goods claim, against cited rules.", "grainside");
    app.get_formatter()->column_width(kHelpColumn);
    app.footer(kFooter);
    app.set_help_flag("-h,--help", "Show this help");
    bool version = false;
    app.add_flag("--version", version, "Print the version and what the built-in rule book holds");
    ChosenCommand chosen;
    add_check(app, chosen);
    add_claims(app, chosen);
    add_reword(app, chosen);
    add_markets_command(app, chosen);
    add_survey(app, chosen);
    add_judge(app, chosen);
    add_identify(app, chosen);
    add_plan(app, chosen);
    add_price(app, chosen);
    add_report(app, chosen);
    add_desk(app, chosen);
    add_learn(app, chosen);
    add_rules(app, chosen);
    add_sources(app, chosen);

    if (const std::optional<int> status = refuse_unknown_command(app, argc, argv)) return *status;
    try {
        app.parse(argc, argv);
    } catch (const CLI::CallForHelp& request) {
        return print_help(app, request);
    } catch (const CLI::ParseError& error) {
        return report_wrong_call(app, error);
    }
    if (version) return print_version();
    if (chosen) return chosen();
    return report_wrong_call(app, CLI::RequiredError("A command"));
}

}  // namespace grainside::tools
