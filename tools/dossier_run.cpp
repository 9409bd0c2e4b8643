#include "dossier_run.h"

#include <utility>

#include "calendar.h"

namespace grainside::tools {

const char* const kExitStatusOfDossiers =
    "Exit status:\n"
    "  0  done\n"
    "  2  an error: a wrong call, a dossier that cannot be read or has a fault (the\n"
    "     others are read all the same), output that cannot be written";

void add_dossiers(CLI::App& command, DossierOptionsOfCall& options, const std::string& what_jsonl_is) {
    command.add_option("dossiers", options.dossiers, "Dossiers to read, one YAML file a sample")
        ->type_name("DOSSIER")
        ->required();
    add_format(command, options.format, what_jsonl_is);
    add_colour(command, options.colour);
    add_rules_folder(command, options.rules_folder);
}

void for_each_dossier(const std::vector<std::string>& files, const EvidenceBook& evidence, Diagnostics& diagnostics,
                      const std::function<bool(Dossier&&)>& handle) {
    const DossierOptions options{.today = today()};
    for (const std::string& file : files) {
        Result<Dossier> dossier = Dossier::read(file, evidence, options);
        if (!dossier) {
            diagnostics.report(dossier.issues());
            continue;
        }
        diagnostics.report(dossier.value().warnings());
        if (!handle(std::move(dossier).value())) return;
    }
}

}  // namespace grainside::tools
