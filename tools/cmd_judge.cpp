#include "cmd_judge.h"

#include <algorithm>
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
    "  grainside judge tote.yaml\n"
    "  grainside judge --market eu,us --format jsonl dossiers/*.yaml > verdicts.jsonl\n"
    "  grainside judge --decide guarded-acceptance --fail-at unsupported tote.yaml\n\n";

}  // namespace

void add_judge(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<JudgeCall>();
    CLI::App* command = app.add_subcommand("judge", "Judge a sample's listing by what its tests showed");
    add_dossiers(*command, call->shared, "one verdict a line,\nand a closing line for each dossier");
    add_judged_for(*command, call->judged_for, "the day on which the listing was captured");
    command
        ->add_option("--decide", call->decision_rule,
                     "How a value is held against a limit (JCGM 106):\n"
                     "both-guarded (default), simple-acceptance,\n"
                     "guarded-acceptance, guarded-rejection")
        ->type_name("RULE")
        ->check(one_of({"both-guarded", "simple-acceptance", "guarded-acceptance", "guarded-rejection"}));
    add_fail_at(*command, call->fail_at);
    command->footer(std::string(kFooter) + kExitStatusOfVerdicts);
    command->final_callback([call, &chosen] { chosen = [call] { return run_judge(*call); }; });
}

int run_judge(const JudgeCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(call.shared.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    const std::optional<EvidenceBook> evidence = load_evidence(*book, call.shared.rules_folder, diagnostics);
    JudgeOptions options;
    options.check = check_options_of(call.judged_for, *book, diagnostics);
    if (!evidence || diagnostics.any_errors()) return finish(output, diagnostics, false);
    options.decision_rule = decision_rule_named(call.decision_rule).value_or(DecisionRule::both_guarded);

    Judge judge(*book, *evidence, options);
    const ViewOptions view = view_options(call.shared.colour);
    const bool for_people = call.shared.format == "human";
    Grade worst = Grade::consistent;
    bool any = false;
    for_each_dossier(call.shared.dossiers, *evidence, diagnostics, [&](const Dossier& dossier) {
        const Judgement& judgement = judge.judge(dossier);
        const DossierContext context{*book, *evidence, dossier};
        worst = std::min(worst, judgement.worst);
        any = true;
        if (for_people) {
            write_judgement_view(context, judgement, options, view, output.text());
        } else {
            write_judgement_records(context, judgement, options, output.text());
        }
        return output.keep_going();
    });
    if (for_people && any) write_view_end(*book, output.text());
    return finish(output, diagnostics, worst <= grade_named(call.fail_at).value_or(Grade::misleading));
}

}  // namespace grainside::tools
