#include "cmd_check.h"

#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "calendar.h"
#include "check_output.h"
#include "check_totals.h"
#include "diagnostics.h"
#include "fields_left_out.h"
#include "finish.h"
#include "grainside/checker.h"
#include "interrupt.h"
#include "load_book.h"
#include "ordered_listings.h"
#include "output.h"
#include "unknown_regions.h"

namespace grainside::tools {
namespace {

constexpr const char* kExamples =
    "Examples:\n"
    "  grainside check listing.txt\n"
    "  echo 'Genuine PU leather tote' | grainside check\n"
    "  grainside check --format jsonl --market us,eu catalog.jsonl > findings.jsonl\n"
    "  grainside check --quiet --fail-at unsupported --on 2026-09-27 catalog.jsonl\n"
    "  grainside check --concessions agreed.yaml catalog.jsonl\n"
    "  grainside check --proofs filed.yaml catalog.jsonl\n"
    "  grainside check --format sarif catalog.jsonl > check.sarif\n"
    "  grainside check --format jsonl --from-record 12346 feed.jsonl >> findings.jsonl\n\n";

// A concession may name a limit, which the evidence half of the book knows. False where something is wrong.
bool load_concessions_of_check(const CheckCall& call, const RuleBook& book, ConcessionsOfCall& concessions,
                               Diagnostics& diagnostics) {
    if (call.concessions.files.empty()) return true;
    const std::optional<EvidenceBook> evidence = load_evidence(book, call.shared.rules_folder, diagnostics);
    return evidence && concessions.load(call.concessions, *evidence, diagnostics);
}

// What one thread checks and counts.
class CheckWorker final : public ListingWorker {
public:
    CheckWorker(const CheckCall& call, const RuleBook& book, const CheckOptions& options,
                const ConcessionsOfCall& concessions, const ProofsOfCall& proofs)
        : quiet_(call.quiet),
          book_(book),
          checker_(book, options),
          written_(call, book, options),
          concessions_(concessions.share()),
          proofs_(proofs.share()),
          regions_(book, options) {}

    void begin_part() override { written_.begin_part(); }

    void handle(const Listing& listing, const std::string& input, OutputPart& part,
                std::vector<Issue>& issues) override {
        const CheckResult& result = checker_.check(listing);
        if (auto issue = fields_left_out(listing, result.fields_too_long)) issues.push_back(std::move(*issue));
        const Conceded* conceded = concessions_.of_findings(book_, listing, result);
        totals_.add(result, conceded);
        regions_.add(listing);
        proofs_.add(result.proofs_met);
        if (!quiet_) written_.write(input, listing, result, checker_, conceded, part);
    }

    const CheckTotals& totals() const noexcept { return totals_; }
    const ConcessionsOfCall& concessions() const noexcept { return concessions_; }
    const ProofsOfCall& proofs() const noexcept { return proofs_; }
    const UnknownRegions& regions() const noexcept { return regions_; }

private:
    bool quiet_;
    const RuleBook& book_;
    Checker checker_;
    CheckOutput written_;
    ConcessionsOfCall concessions_;
    ProofsOfCall proofs_;
    UnknownRegions regions_;
    CheckTotals totals_;
};

}  // namespace

void add_check(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<CheckCall>();
    CLI::App* command = app.add_subcommand("check", "Find what listings may not say, and why");
    add_inputs(*command, call->shared);
    add_judged_for(*command, call->judged_for, "today");
    add_fail_at(*command, call->fail_at);
    add_concessions(*command, call->concessions);
    add_proofs(*command, call->proofs);
    add_format_with_sarif(*command, call->shared.format, "one finding a line,\nand a closing line for each listing");
    add_colour(*command, call->shared.colour);
    add_run_options(*command, call->run);
    add_rules_folder(*command, call->shared.rules_folder);
    command->add_flag("--quiet", call->quiet, "Write no findings; the exit status tells");
    command->footer(std::string(kExamples) + kExitStatusOfChecks);
    command->final_callback([call, &chosen] { chosen = [call] { return run_check(*call); }; });
}

int run_check(const CheckCall& given) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(given.shared.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    CheckOptions options = check_options_of(given.judged_for, *book, diagnostics);
    ProofsOfCall proofs;
    ConcessionsOfCall concessions;
    if (!proofs.load(given.proofs, *book, options, diagnostics) ||
        !load_concessions_of_check(given, *book, concessions, diagnostics) || diagnostics.any_errors()) {
        return finish(output, diagnostics, false);
    }
    CheckCall call = given;
    call.shared.inputs = inputs_of(given.shared, diagnostics);
    if (options.on.empty()) options.on = today();

    Interrupt interrupt;
    CheckOutput written(call, *book, options);
    if (written.is_log()) diagnostics.keep_issues();
    written.begin(output.text());
    CheckTotals totals;
    UnknownRegions regions(*book, options);
    ListingWork work;
    work.make_worker = [&] { return std::make_unique<CheckWorker>(call, *book, options, concessions, proofs); };
    work.before_part = [&](const OutputPart& part) { return written.before_part(part); };
    work.merge = [&](ListingWorker& worker) {
        const auto& done = static_cast<const CheckWorker&>(worker);
        totals.add(done.totals());
        concessions.add(done.concessions());
        proofs.add(done.proofs());
        regions.add(done.regions());
    };
    const RunEnd end = run_listings(call.shared, call.run, work, interrupt, diagnostics, output);
    regions.report(diagnostics);
    // What was not read cannot tell that something is not needed.
    const bool saw_all = end != RunEnd::interrupted && call.run.from_record == 1;
    if (saw_all) proofs.report_unused(diagnostics);
    const bool stale = saw_all && concessions.report_stale(true, diagnostics);
    written.end(totals, diagnostics, end != RunEnd::interrupted, output.text());
    return interrupt.end(
        finish(output, diagnostics, stale || totals.worst() <= grade_named(call.fail_at).value_or(Grade::misleading)));
}

}  // namespace grainside::tools
