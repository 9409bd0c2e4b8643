#include "cmd_learn.h"

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "finish.h"
#include "grainside/dossier_report.h"
#include "grainside/learn.h"
#include "load_book.h"
#include "output.h"
#include "terminal.h"

namespace grainside::tools {
namespace {

constexpr double kLeastWeight = 1e-3;
constexpr double kMostWeight = 1e9;

constexpr const char* kLearnFooter =
    "Examples:\n"
    "  grainside learn dossiers/*.yaml\n"
    "  grainside learn --weight 50 --format jsonl dossiers/*.yaml\n\n";

}  // namespace

void add_learn(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<LearnCall>();
    CLI::App* command = app.add_subcommand("learn", "Show what confirmed dossiers teach");
    add_dossiers(*command, call->shared);
    add_format(*command, call->shared.format,
               "one method and material a\nline, and a closing line with the calibration");
    command
        ->add_option("--weight", call->weight,
                     "How many readings the book's figures are worth beside\n"
                     "the confirmed ones (default: 20)")
        ->type_name("N")
        ->check(CLI::Validator(
            [](const std::string& text) -> std::string {
                double weight = 0;
                const bool read = CLI::detail::lexical_cast(text, weight);
                if (read && weight >= kLeastWeight && weight <= kMostWeight) return {};
                return "'" + text + "' is no number from 0.001 to 1000000000";
            },
            ""));
    command->footer(std::string(kLearnFooter) + kExitStatusOfDossiers);
    command->final_callback([call, &chosen] { chosen = [call] { return run_learn(*call); }; });
}

int run_learn(const LearnCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(call.shared.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    const std::optional<EvidenceBook> evidence = load_evidence(*book, call.shared.rules_folder, diagnostics);
    if (!evidence) return finish(output, diagnostics, false);

    std::vector<Dossier> dossiers;
    for_each_dossier(call.shared.dossiers, *evidence, diagnostics, [&](Dossier&& dossier) {
        dossiers.push_back(std::move(dossier));
        return true;
    });
    const Learning learning = learn(*evidence, dossiers, call.weight);
    if (call.shared.format == "human") {
        write_learning_view(learning, view_options(call.shared.colour), output.text());
        write_view_end(*book, output.text());
    } else {
        write_learning_records(*book, learning, output.text());
    }
    return finish(output, diagnostics, false);
}

}  // namespace grainside::tools
