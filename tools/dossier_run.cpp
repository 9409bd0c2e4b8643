#include "dossier_run.h"

#include <cstddef>
#include <iostream>
#include <utility>

#include "calendar.h"

namespace grainside::tools {
namespace {

// More than a dossier may hold is refused by whoever parses it.
std::string read_standard_input() {
    constexpr std::size_t kMost = (std::size_t{4} << 20) + 1;
    std::string text(kMost, '\0');
    std::cin.read(text.data(), static_cast<std::streamsize>(kMost));
    text.resize(static_cast<std::size_t>(std::cin.gcount()));
    return text;
}

}  // namespace

const char* const kExitStatusOfDossiers =
    "Exit status:\n"
    "  0  done\n"
    "  2  an error: a wrong call, a dossier that cannot be read or has a fault (the\n"
    "     others are read all the same), output that cannot be written";

const char* const kExitStatusOfVerdicts =
    "Exit status:\n"
    "  0  done, and no verdict is at or above the grade of --fail-at\n"
    "  1  done, and one is\n"
    "  2  an error: a wrong call, a dossier that cannot be read or has a fault (the\n"
    "     others are judged all the same), output that cannot be written";

void add_dossiers(CLI::App& command, DossierOptionsOfCall& options, const std::string& what_jsonl_is) {
    command.add_option("dossiers", options.dossiers, "Dossiers to read, one YAML file a sample; '-': standard\ninput")
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
        Result<Dossier> dossier = file == "-" ? Dossier::parse("<stdin>", read_standard_input(), ".", evidence, options)
                                              : Dossier::read(file, evidence, options);
        if (!dossier) {
            diagnostics.report(dossier.issues());
            continue;
        }
        diagnostics.report(dossier.value().warnings());
        if (!handle(std::move(dossier).value())) return;
    }
}

}  // namespace grainside::tools
