#include "cmd_identify.h"

#include <memory>
#include <string>

namespace grainside::tools {
namespace {

constexpr const char* kIdentifyFooter =
    "Examples:\n"
    "  grainside identify tote.yaml\n"
    "  grainside identify --format jsonl tote.yaml\n\n";

}  // namespace

void add_identify(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<IdentifyCall>();
    CLI::App* command = app.add_subcommand("identify", "Show what each part of a sample may be");
    add_dossiers(*command, call->shared);
    add_format(*command, call->shared.format, "one part and question a\nline, and a closing line for each dossier");
    command->footer(std::string(kIdentifyFooter) + kExitStatusOfDossiers);
    command->final_callback([call, &chosen] { chosen = [call] { return run_identify(*call); }; });
}

int run_identify(const IdentifyCall& call) {
    return run_judging(
        call.shared, {}, DecisionRule::both_guarded, Grade::contradicted,
        {.write = [](Judge& judge, const DossierContext& context, const ViewOptions* view, std::string& out) {
            const Judgement& judgement = judge.identify(context.dossier);
            if (view != nullptr) {
                write_identity_view(context, judgement, *view, out);
            } else {
                write_identity_records(context, judgement, out);
            }
            return Grade::consistent;
        }});
}

}  // namespace grainside::tools
