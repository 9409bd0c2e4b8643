#include "cmd_survey.h"

#include <algorithm>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "atomic_file.h"
#include "calendar.h"
#include "diagnostics.h"
#include "fields_left_out.h"
#include "finish.h"
#include "grainside/checker.h"
#include "grainside/survey.h"
#include "grainside/survey_report.h"
#include "interrupt.h"
#include "load_book.h"
#include "ordered_listings.h"
#include "output.h"
#include "same_file.h"
#include "terminal.h"
#include "unknown_regions.h"

namespace grainside::tools {
namespace {

constexpr const char* kSurveyFooter =
    "Examples:\n"
    "  grainside survey catalog.jsonl\n"
    "  grainside survey --market us --at unsupported --by seller,rule shops/*.jsonl\n"
    "  grainside survey --out survey.html shops/*.jsonl\n"
    "  grainside survey --format csv --top 100 catalog.jsonl > survey.csv\n\n"
    "Exit status: 0 done, whatever was found; 2 an error: a wrong call, a file or\n"
    "record that cannot be read (the others count), output that cannot be written.";

// A number that is none passes CLI::Range, because it is neither below nor above.
std::string refuse_points(const std::string& text) {
    double points = 0;
    const bool read = CLI::detail::lexical_cast(text, points);
    return read && points >= 0.1 && points <= 50 ? std::string() : "'" + text + "' is no number from 0.1 to 50";
}

// The name of --out decides where --format does not.
std::string_view format_of(const SurveyCall& call) {
    if (!call.shared.format.empty()) return call.shared.format;
    for (const std::string_view format : {"html", "json", "csv"}) {
        if (call.out.ends_with('.' + std::string(format))) return format;
    }
    if (call.out.ends_with(".htm")) return "html";
    return "human";
}

// A survey of a part does not take the place of one of all.
Issue survey_not_written(std::string_view path) {
    Issue issue;
    issue.severity = Issue::Severity::note;
    issue.message = "'" + std::string(path) + "' is not written, because not every record was counted";
    issue.hint = "without --out a stopped survey shows what it has counted";
    return issue;
}

SurveyShown shown_of(const std::vector<std::string>& by) {
    const auto has = [&](std::string_view name) {
        return by.empty() || std::find(by.begin(), by.end(), name) != by.end();
    };
    return {has("grade"), has("seller"), has("part"), has("category"), has("market"), has("rule")};
}

std::string written_survey(const SurveyCall& call, const SurveyContext& context) {
    std::string text;
    const std::string_view format = format_of(call);
    if (format == "html") {
        write_survey_page(context, text);
    } else if (format == "json") {
        write_survey_json(context, text);
    } else if (format == "csv") {
        write_survey_csv(context, text);
    } else {
        // A file has no colours and no width of its own.
        write_survey_view(context, call.out.empty() ? view_options(call.shared.colour) : ViewOptions(), text);
    }
    return text;
}

void add_survey_numbers(CLI::App& command, SurveyCall& call) {
    command
        .add_option("--at", call.at,
                    "Rates count listings with a finding of this grade or a\n"
                    "worse one: contradicted, misleading (default),\n"
                    "unsupported, inconclusive, vague")
        ->type_name("GRADE")
        ->check(one_of({"contradicted", "misleading", "unsupported", "inconclusive", "vague"}));
    command.add_option("--by", call.by, "Show only these: seller, part, category, market, rule,\ngrade (default: all)")
        ->type_name("WHAT[,WHAT...]")
        ->delimiter(',')
        ->allow_extra_args(false)
        ->check(one_of({"seller", "part", "category", "market", "rule", "grade"}));
    command.add_option("--confidence", call.confidence, "Of the limits, in percent: 90, 95 (default), 99")
        ->type_name("PERCENT")
        ->check(one_of({"90", "95", "99"}));
    command
        .add_option("--within", call.within,
                    "Say how many more listings it takes to know a seller's\n"
                    "rate within so many percentage points (half of what\n"
                    "lies between its limits; default: 10)")
        ->type_name("POINTS")
        ->check(CLI::Validator(refuse_points, ""));
    command
        .add_option("--top", call.top,
                    "List so many of the worst listings and of the commonest\n"
                    "wordings (default: 10; 0 to 10000)")
        ->type_name("N")
        ->check(CLI::Range(0U, static_cast<unsigned>(kMostListed)).description(""));
}

SurveyOptions survey_options_of(const SurveyCall& call, const CheckOptions& check) {
    SurveyOptions options;
    options.confidence = call.confidence / 100.0;
    options.within = call.within / 100;
    options.at = grade_named(call.at).value_or(Grade::misleading);
    options.top = call.top;
    options.markets = check.markets;
    return options;
}

// What one thread checks and counts.
class SurveyWorker final : public ListingWorker {
public:
    SurveyWorker(const SurveyCall& call, const RuleBook& book, const CheckOptions& options, const ProofsOfCall& proofs)
        : checker_(book, options),
          tally_(book, survey_options_of(call, options)),
          proofs_(proofs.share()),
          regions_(book, options) {}

    void handle(const Listing& listing, const std::string&, OutputPart&, std::vector<Issue>& issues) override {
        const CheckResult& result = checker_.check(listing);
        if (auto issue = fields_left_out(listing, result.fields_too_long)) issues.push_back(std::move(*issue));
        tally_.add(listing, result, checker_);
        proofs_.add(result.proofs_met);
        regions_.add(listing);
    }

    SurveyTally take_tally() { return std::move(tally_); }
    const ProofsOfCall& proofs() const noexcept { return proofs_; }
    const UnknownRegions& regions() const noexcept { return regions_; }

private:
    Checker checker_;
    SurveyTally tally_;
    ProofsOfCall proofs_;
    UnknownRegions regions_;
};

}  // namespace

void add_survey(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<SurveyCall>();
    call->shared.format.clear();
    CLI::App* command = app.add_subcommand("survey", "Count what is flagged in many listings: rates with limits");
    add_inputs(*command, call->shared);
    add_judged_for(*command, call->judged_for, "today");
    add_proofs(*command, call->proofs);
    add_survey_numbers(*command, *call);
    command
        ->add_option("--format", call->shared.format,
                     "human (default), html, json or csv; without it the name\nof --out decides")
        ->type_name("FORMAT")
        ->check(one_of({"human", "html", "json", "csv"}));
    command->add_option("--out", call->out, "Write to this file, whole or not at all (default:\nstandard output)")
        ->type_name("FILE");
    add_colour(*command, call->shared.colour);
    add_run_options(*command, call->run);
    add_rules_folder(*command, call->shared.rules_folder);
    command->footer(kSurveyFooter);
    command->final_callback([call, &chosen] { chosen = [call] { return run_survey(*call); }; });
}

int run_survey(const SurveyCall& given) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(given.shared.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    CheckOptions options = check_options_of(given.judged_for, *book, diagnostics);
    ProofsOfCall proofs;
    if (!proofs.load(given.proofs, *book, options, diagnostics) || diagnostics.any_errors()) {
        return finish(output, diagnostics, false);
    }
    SurveyCall call = given;
    call.shared.inputs = inputs_of(given.shared, diagnostics);
    for (const std::string& input : call.shared.inputs) {
        if (call.out.empty() || !is_same_file(input, call.out)) continue;
        diagnostics.error("--out: '" + call.out + "' is an input and would be lost", "name another file");
        return finish(output, diagnostics, false);
    }
    if (options.on.empty()) options.on = today();

    Interrupt interrupt;
    SurveyTally tally(*book, survey_options_of(call, options));
    UnknownRegions regions(*book, options);
    ListingWork work;
    work.make_worker = [&] { return std::make_unique<SurveyWorker>(call, *book, options, proofs); };
    work.merge = [&](ListingWorker& worker) {
        auto& done = static_cast<SurveyWorker&>(worker);
        tally.merge(done.take_tally());
        proofs.add(done.proofs());
        regions.add(done.regions());
    };
    const RunEnd end = run_listings(call.shared, call.run, work, interrupt, diagnostics, output);
    regions.report(diagnostics);
    if (end != RunEnd::interrupted && call.run.from_record == 1) proofs.report_unused(diagnostics);
    Survey survey = tally.survey();
    survey.reading_errors = diagnostics.errors();
    std::string text = written_survey(call, {*book, survey, options.on, shown_of(call.by)});
    if (call.out.empty()) {
        output.text() = std::move(text);
    } else if (end == RunEnd::interrupted) {
        diagnostics.report(survey_not_written(call.out));
    } else {
        AtomicFile file(call.out);
        if (!file.write(text) || !file.commit()) diagnostics.error(file.failure(), file.hint());
    }
    return interrupt.end(finish(output, diagnostics, false));
}

}  // namespace grainside::tools
