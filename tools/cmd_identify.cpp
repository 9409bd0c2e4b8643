#include "cmd_identify.h"

#include <memory>
#include <optional>
#include <string>

#include "finish.h"
#include "grainside/dossier_report.h"
#include "load_book.h"
#include "output.h"
#include "terminal.h"

namespace grainside::tools {
namespace {

constexpr const char* kFooter =
    "Examples:\n"
    "  grainside identify tote.yaml\n"
    "  grainside identify --format jsonl tote.yaml\n\n";

}  // namespace

void add_identify(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<IdentifyCall>();
    CLI::App* command = app.add_subcommand("identify", "Show what each part of a sample may be");
    add_dossiers(*command, call->shared, "one part and question a\nline, and a closing line for each dossier");
    command->footer(std::string(kFooter) + kExitStatusOfDossiers);
    command->final_callback([call, &chosen] { chosen = [call] { return run_identify(*call); }; });
}

int run_identify(const IdentifyCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(call.shared.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    const std::optional<EvidenceBook> evidence = load_evidence(*book, call.shared.rules_folder, diagnostics);
    if (!evidence) return finish(output, diagnostics, false);

    Judge judge(*book, *evidence);
    const ViewOptions view = view_options(call.shared.colour);
    const bool for_people = call.shared.format == "human";
    bool any = false;
    for_each_dossier(call.shared.dossiers, *evidence, diagnostics, [&](const Dossier& dossier) {
        const Judgement& judgement = judge.identify(dossier);
        const DossierContext context{*book, *evidence, dossier};
        any = true;
        if (for_people) {
            write_identity_view(context, judgement, view, output.text());
        } else {
            write_identity_records(context, judgement, output.text());
        }
        return output.keep_going();
    });
    if (for_people && any) write_view_end(*book, output.text());
    return finish(output, diagnostics, false);
}

}  // namespace grainside::tools
