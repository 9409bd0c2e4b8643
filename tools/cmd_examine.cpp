#include "cmd_examine.h"

#include <algorithm>
#include <iterator>
#include <memory>
#include <optional>
#include <string_view>
#include <vector>

#include "diagnostics.h"
#include "dossier_run.h"
#include "examination_text.h"
#include "finish.h"
#include "known_names.h"
#include "listing_run.h"
#include "load_book.h"
#include "output.h"
#include "verdict/examination/examiner.h"

namespace grainside::tools {
namespace {

constexpr const char* kExamineFooter =
    "Errors: rules and conditions that can never hold, rules that never speak, rules\n"
    "in whose place another one always speaks, texts that a proof has twice. Notes:\n"
    "rules that a narrower market's rule overrules, concepts that nothing asks about,\n"
    "sources that nothing cites, texts too alike, market rules without a date or from\n"
    "memory only, and titles and reasons that two rules share.\n"
    "Two texts of one proof are alike where they flag the same words, share two words\n"
    "or more, and each has at most one word that the other lacks; they are the same\n"
    "where all words are, in order. Articles, 'this', 'the' and nouns of products do\n"
    "not count, nor do marks.\n"
    "Every text is asked in every market of the book, on every day on which rules\n"
    "come into force or end.\n\n"
    "Examples:\n"
    "  grainside rules examine\n"
    "  grainside rules examine --rules my-rules genuine-on-imitation\n"
    "  grainside rules examine --over catalog.jsonl\n"
    "  grainside rules examine --coverage --over dossiers/*.yaml\n\n"
    "Exit status:\n"
    "  0  no error was found in the book; with --coverage: done\n"
    "  1  one was\n"
    "  2  an error of the call, such as a rule folder that cannot be loaded";

bool is_dossier(const std::string& file) {
    return file.ends_with(".yaml") || file.ends_with(".yml");
}

void add_listings(const ExamineCall& call, Examiner& examiner, Diagnostics& diagnostics) {
    SharedOptions listings;
    for (const std::string& file : call.over) {
        if (!is_dossier(file)) listings.inputs.push_back(file);
    }
    if (listings.inputs.empty()) return;
    for_each_listing(listings, diagnostics, [&](const Listing& listing, const std::string&) {
        examiner.add(listing);
        return true;
    });
}

}  // namespace

void add_examine(CLI::App& group, ChosenCommand& chosen) {
    const auto call = std::make_shared<ExamineCall>();
    CLI::App* command = group.add_subcommand("examine", "Find rules that cannot speak, hide one another or repeat");
    command->add_option("rule", call->rule, "Only what concerns this rule")->type_name("RULE");
    command
        ->add_option("--over", call->over,
                     "Ask these texts too: listings as `check` reads them, and\ndossiers (.yaml), which are the cases "
                     "of the limits")
        ->type_name("FILE");
    command->add_flag("--coverage", call->coverage,
                      "Print instead which conditions the proof texts have seen\ntrue and false, and which limits the "
                      "dossiers of\n--over have seen true, false and unknown");
    add_rules_folder(*command, call->shared.rules_folder);
    add_format(*command, call->shared.format,
               "one remark a line,\nor one condition, and a closing line with the counts");
    command->footer(kExamineFooter);
    command->final_callback([call, &chosen] { chosen = [call] { return run_examine(*call); }; });
}

int run_examine(const ExamineCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::string& folder = call.shared.rules_folder;
    const std::optional<RuleBook> book = load_book(folder, diagnostics);
    if (!book || (!call.rule.empty() && !is_known_rule(*book, call.rule, diagnostics))) {
        return finish(output, diagnostics, false);
    }
    std::vector<std::string> dossiers;
    std::copy_if(call.over.begin(), call.over.end(), std::back_inserter(dossiers), is_dossier);
    // A book of rules alone has no evidence half, and needs none for the rest.
    std::optional<EvidenceBook> evidence;
    if (!dossiers.empty()) {
        evidence = load_evidence(*book, folder, diagnostics);
        if (!evidence) return finish(output, diagnostics, false);
    }
    Examiner examiner(*book, evidence ? &*evidence : nullptr);
    add_listings(call, examiner, diagnostics);
    if (evidence) {
        for_each_dossier(dossiers, *evidence, diagnostics, [&](const Dossier& dossier) {
            examiner.add(dossier);
            return true;
        });
    }
    const bool for_people = call.shared.format == "human";
    if (call.coverage) {
        const CoverageReport report = examiner.coverage(call.rule);
        for_people ? append_coverage(report, folder, output.text())
                   : append_coverage_records(report, folder, output.text());
        return finish(output, diagnostics, false);
    }
    const ExaminationReport report = examiner.report(call.rule);
    for_people ? append_remarks(report, folder, output.text()) : append_remark_records(report, folder, output.text());
    return finish(output, diagnostics, report.errors > 0);
}

}  // namespace grainside::tools
