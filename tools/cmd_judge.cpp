#include "cmd_judge.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "grainside/sarif.h"

namespace grainside::tools {
namespace {

constexpr const char* kJudgeFooter =
    "Examples:\n"
    "  grainside judge tote.yaml\n"
    "  grainside judge --market eu,us --format jsonl dossiers/*.yaml > verdicts.jsonl\n"
    "  grainside judge --decide guarded-acceptance --fail-at unsupported tote.yaml\n"
    "  grainside judge --concessions agreed.yaml tote.yaml\n"
    "  grainside judge --proofs filed.yaml dossiers/*.yaml\n"
    "  grainside judge --format sarif dossiers/*.yaml > judge.sarif\n\n";

}  // namespace

void add_judge(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<JudgeCall>();
    CLI::App* command = app.add_subcommand("judge", "Judge a sample's listing by what its tests showed");
    add_dossiers(*command, call->shared);
    add_format_with_sarif(*command, call->shared.format, "one verdict a line,\nand a closing line for each dossier");
    add_judged_for(*command, call->judged_for, "that on which the listing was captured, else today");
    add_decision_rule(*command, call->decision_rule);
    add_fail_at(*command, call->fail_at);
    add_concessions(*command, call->concessions);
    add_proofs(*command, call->proofs);
    command->footer(std::string(kJudgeFooter) + kExitStatusOfVerdicts);
    command->final_callback([call, &chosen] { chosen = [call] { return run_judge(*call); }; });
}

int run_judge(const JudgeCall& call) {
    const auto rule = decision_rule_named(call.decision_rule).value_or(DecisionRule::both_guarded);
    const Grade fail_at = grade_named(call.fail_at).value_or(Grade::misleading);
    ConcessionsOfCall concessions;
    ProofsOfCall proofs;
    Diagnostics* trouble = nullptr;
    std::optional<SarifWriter> log;
    DossierSteps steps;
    steps.begin = [&](const EvidenceBook& evidence, JudgeOptions& judged, Diagnostics& diagnostics, std::string& out) {
        trouble = &diagnostics;
        if (!proofs.load(call.proofs, evidence.rule_book(), judged.check, diagnostics) ||
            !concessions.load(call.concessions, evidence, diagnostics)) {
            return false;
        }
        if (call.shared.format != "sarif") return true;
        diagnostics.keep_issues();
        log.emplace(evidence, SarifRun{"judge", judged.check.markets, judged.check.on});
        log->begin(out);
        return true;
    };
    steps.write = [&](Judge& judge, const DossierContext& context, const ViewOptions* view, std::string& out) {
        const Judgement& judgement = judge.judge(context.dossier);
        const CheckResult* check = judgement.check;
        proofs.add(context.dossier, check == nullptr ? std::vector<std::uint32_t>() : check->proofs_met, *trouble);
        const Conceded* conceded = concessions.of_verdicts(context.book, context.dossier.listing(), judgement);
        if (log) {
            log->write_verdicts(context, judgement, out, conceded);
        } else if (view != nullptr) {
            write_judgement_view(context, judgement, judge.options(), *view, out, conceded);
        } else {
            write_judgement_records(context, judgement, judge.options(), out, conceded);
        }
        return conceded != nullptr ? conceded->worst : judgement.worst;
    };
    steps.end = [&](Diagnostics& diagnostics, std::string& out) {
        proofs.report_unused(diagnostics);
        const bool stale = concessions.report_stale(false, diagnostics);
        if (log) log->end(diagnostics.kept(), !diagnostics.any_errors(), out);
        return stale;
    };
    return run_judging(call.shared, call.judged_for, rule, fail_at, steps);
}

}  // namespace grainside::tools
