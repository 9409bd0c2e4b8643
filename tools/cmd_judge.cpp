#include "cmd_judge.h"

#include <memory>
#include <string>

namespace grainside::tools {
namespace {

constexpr const char* kJudgeFooter =
    "Examples:\n"
    "  grainside judge tote.yaml\n"
    "  grainside judge --market eu,us --format jsonl dossiers/*.yaml > verdicts.jsonl\n"
    "  grainside judge --decide guarded-acceptance --fail-at unsupported tote.yaml\n\n";

}  // namespace

void add_judge(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<JudgeCall>();
    CLI::App* command = app.add_subcommand("judge", "Judge a sample's listing by what its tests showed");
    add_dossiers(*command, call->shared, "one verdict a line,\nand a closing line for each dossier");
    add_judged_for(*command, call->judged_for, "that on which the listing was captured, else today");
    add_decision_rule(*command, call->decision_rule);
    add_fail_at(*command, call->fail_at);
    command->footer(std::string(kJudgeFooter) + kExitStatusOfVerdicts);
    command->final_callback([call, &chosen] { chosen = [call] { return run_judge(*call); }; });
}

int run_judge(const JudgeCall& call) {
    const auto rule = decision_rule_named(call.decision_rule).value_or(DecisionRule::both_guarded);
    const Grade fail_at = grade_named(call.fail_at).value_or(Grade::misleading);
    return run_judging(call.shared, call.judged_for, rule, fail_at,
                       [](Judge& judge, const DossierContext& context, const ViewOptions* view, std::string& out) {
                           const Judgement& judgement = judge.judge(context.dossier);
                           if (view != nullptr) {
                               write_judgement_view(context, judgement, judge.options(), *view, out);
                           } else {
                               write_judgement_records(context, judgement, judge.options(), out);
                           }
                           return judgement.worst;
                       });
}

}  // namespace grainside::tools
