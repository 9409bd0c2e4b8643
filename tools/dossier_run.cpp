#include "dossier_run.h"

#include <algorithm>
#include <cstddef>
#include <iostream>
#include <optional>
#include <utility>

#include "calendar.h"
#include "finish.h"
#include "load_book.h"
#include "output.h"
#include "terminal.h"
#include "unknown_regions.h"

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
    "  1  done, and one is, or with --no-stale-concessions a concession is stale\n"
    "  2  an error: a wrong call, a dossier that cannot be read or has a fault (the\n"
    "     others are judged all the same), output that cannot be written";

void add_dossiers(CLI::App& command, DossierOptionsOfCall& options) {
    command.add_option("dossiers", options.dossiers, "Dossiers to read, one YAML file a sample; '-': standard\ninput")
        ->type_name("DOSSIER")
        ->required();
    add_colour(command, options.colour);
    add_rules_folder(command, options.rules_folder);
}

void for_each_dossier(const std::vector<std::string>& files, const EvidenceBook& evidence, Diagnostics& diagnostics,
                      const std::function<bool(Dossier&&)>& handle) {
    const DossierOptions options{.today = today()};
    std::size_t done = 0;
    for (const std::string& file : files) {
        diagnostics.progress().show_dossiers(done++, files.size());
        Result<Dossier> dossier = file == "-" ? Dossier::parse("<stdin>", read_standard_input(), ".", evidence, options)
                                              : Dossier::read(file, evidence, options);
        if (!dossier) {
            diagnostics.report(dossier.issues());
            continue;
        }
        diagnostics.report(dossier.value().warnings());
        if (!handle(std::move(dossier).value())) break;
    }
    diagnostics.progress().clear();
}

int run_judging(const DossierOptionsOfCall& options, const JudgedFor& judged_for, DecisionRule decision_rule,
                Grade fail_at, const DossierSteps& steps) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(options.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    const std::optional<EvidenceBook> evidence = load_evidence(*book, options.rules_folder, diagnostics);
    JudgeOptions judge_options{check_options_of(judged_for, *book, diagnostics), decision_rule, today()};
    if (!evidence || diagnostics.any_errors()) return finish(output, diagnostics, false);
    if (steps.begin && !steps.begin(*evidence, judge_options, diagnostics, output.text())) {
        return finish(output, diagnostics, false);
    }

    Judge judge(*book, *evidence, judge_options);
    const ViewOptions view = view_options(options.colour);
    const bool for_people = options.format == "human";
    Grade worst = Grade::consistent;
    bool any = false;
    UnknownRegions regions(*book, judge_options.check);
    for_each_dossier(options.dossiers, *evidence, diagnostics, [&](const Dossier& dossier) {
        any = true;
        if (dossier.listing() != nullptr) regions.add(*dossier.listing());
        worst = std::min(worst,
                         steps.write(judge, {*book, *evidence, dossier}, for_people ? &view : nullptr, output.text()));
        return output.keep_going();
    });
    regions.report(diagnostics);
    if (for_people && any) write_view_end(*book, output.text());
    const bool fails = steps.end && steps.end(diagnostics, output.text());
    return finish(output, diagnostics, worst <= fail_at || fails);
}

}  // namespace grainside::tools
