#include "cmd_plan.h"

#include <memory>
#include <string>

namespace grainside::tools {
namespace {

constexpr const char* kPlanFooter =
    "Examples:\n"
    "  grainside plan tote.yaml\n"
    "  grainside plan --market eu --format jsonl tote.yaml\n\n";

}  // namespace

void add_plan(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<PlanCall>();
    CLI::App* command = app.add_subcommand("plan", "Say which tests would settle what is open");
    add_dossiers(*command, call->shared);
    add_format(*command, call->shared.format, "one test a line, and a\nclosing line for each dossier");
    add_judged_for(*command, call->judged_for, "that on which the listing was captured, else today");
    command->footer(std::string(kPlanFooter) + kExitStatusOfDossiers);
    command->final_callback([call, &chosen] { chosen = [call] { return run_plan(*call); }; });
}

int run_plan(const PlanCall& call) {
    return run_judging(
        call.shared, call.judged_for, DecisionRule::both_guarded, Grade::contradicted,
        {.write = [](Judge& judge, const DossierContext& context, const ViewOptions* view, std::string& out) {
            const TestPlan plan = judge.plan(context.dossier);
            if (view != nullptr) {
                write_plan_view(context, plan, *view, out);
            } else {
                write_plan_records(context, plan, out);
            }
            return Grade::consistent;
        }});
}

}  // namespace grainside::tools
