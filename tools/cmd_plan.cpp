#include "cmd_plan.h"

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
    "  grainside plan tote.yaml\n"
    "  grainside plan --market eu --format jsonl tote.yaml\n\n";

}  // namespace

void add_plan(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<PlanCall>();
    CLI::App* command = app.add_subcommand("plan", "Say which tests would settle what is open");
    add_dossiers(*command, call->shared, "one test a line, and a\nclosing line for each dossier");
    add_judged_for(*command, call->judged_for, "the day on which the listing was captured");
    command->footer(std::string(kFooter) + kExitStatusOfDossiers);
    command->final_callback([call, &chosen] { chosen = [call] { return run_plan(*call); }; });
}

int run_plan(const PlanCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(call.shared.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    const std::optional<EvidenceBook> evidence = load_evidence(*book, call.shared.rules_folder, diagnostics);
    JudgeOptions options;
    options.check = check_options_of(call.judged_for, *book, diagnostics);
    if (!evidence || diagnostics.any_errors()) return finish(output, diagnostics, false);

    Judge judge(*book, *evidence, options);
    const ViewOptions view = view_options(call.shared.colour);
    const bool for_people = call.shared.format == "human";
    bool any = false;
    for_each_dossier(call.shared.dossiers, *evidence, diagnostics, [&](const Dossier& dossier) {
        const TestPlan plan = judge.plan(dossier);
        const DossierContext context{*book, *evidence, dossier};
        any = true;
        if (for_people) {
            write_plan_view(context, plan, view, output.text());
        } else {
            write_plan_records(context, plan, output.text());
        }
        return output.keep_going();
    });
    if (for_people && any) write_view_end(*book, output.text());
    return finish(output, diagnostics, false);
}

}  // namespace grainside::tools
