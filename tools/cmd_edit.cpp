#include "cmd_edit.h"

#include <unistd.h>

#include <filesystem>
#include <memory>
#include <optional>
#include <system_error>

#include "diagnostics.h"
#include "edit/serve.h"
#include "load_book.h"

namespace grainside::tools {
namespace {

constexpr const char* kEditFooter =
    "An editor starts it and speaks the Language Server Protocol 3.17 with it. Tell\n"
    "the editor this command, and for which languages it is: plaintext, markdown,\n"
    "html, json, yaml, csv. Where editors are set up by a file, such an entry often\n"
    "reads\n"
    "  command: [\"grainside\", \"edit\", \"--stdio\"]\n"
    "  languages: [\"plaintext\", \"markdown\", \"html\", \"json\", \"yaml\"]\n\n"
    "Examples:\n"
    "  grainside edit\n"
    "  grainside edit --market us,eu --on 2026-09-27\n"
    "  grainside edit --rules rules     rules as they stand in the editor count\n"
    "  grainside edit --concessions agreed.yaml 2> edit.log\n\n"
    "Exit status:\n"
    "  0  the client shut the session down, then ended it\n"
    "  1  the client ended it without that, or has gone\n"
    "  2  an error: a wrong call, a rule folder that is none, a closed pipe";

std::string absolute(const std::string& path) {
    std::error_code error;
    auto whole = std::filesystem::weakly_canonical(path, error);
    if (error) whole = std::filesystem::absolute(path, error);
    return whole.string();
}

bool is_rule_folder(const std::string& folder, Diagnostics& diagnostics) {
    std::error_code error;
    if (folder.empty() || std::filesystem::is_directory(folder, error)) return true;
    diagnostics.error("--rules: '" + folder + "' is no folder that can be read",
                      "--rules takes a folder that is laid out like the project's own rules/");
    return false;
}

}  // namespace

void add_edit(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<EditCall>();
    CLI::App* command = app.add_subcommand("edit", "Check listings, dossiers and rules while they are written");
    add_judged_for(*command, call->judged_for, "today; of a dossier the\nday of its capture");
    command
        ->add_option("--concessions", call->concessions,
                     "The file of concessions (default: concessions.yaml in\nthe workspace's folder)")
        ->type_name("FILE");
    add_rules_folder(*command, call->rules_folder);
    command->add_flag("--stdio", call->stdio, "Standard input and output; there is no other way");
    command
        ->add_option("--clientProcessId", call->client_process,
                     "End when this process has gone (default: the one that\nthe client names)")
        ->type_name("ID");
    command->footer(kEditFooter);
    command->final_callback([call, &chosen] { chosen = [call] { return run_edit(*call); }; });
}

int run_edit(const EditCall& call) {
    constexpr int kError = 2;
    Diagnostics diagnostics;
    if (!is_rule_folder(call.rules_folder, diagnostics)) return kError;
    edit::WorkspaceOptions options;
    options.on = call.judged_for.on;
    if (!call.judged_for.markets.empty()) {
        const std::optional<RuleBook> book = load_book(call.rules_folder, diagnostics);
        if (!book) return kError;
        options.markets = check_options_of(call.judged_for, *book, diagnostics).markets;
        if (diagnostics.any_errors()) return kError;
    }
    if (!call.rules_folder.empty()) options.rules_folder = absolute(call.rules_folder);
    if (!call.concessions.empty()) options.concessions = absolute(call.concessions);
    if (::isatty(STDIN_FILENO) == 1) {
        write_to_stderr("grainside: edit: waiting for an editor that speaks the Language Server Protocol\n");
    }
    return edit::serve(std::move(options), call.client_process);
}

}  // namespace grainside::tools
