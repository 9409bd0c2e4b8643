#include "cmd_check.h"

#include <memory>
#include <optional>

#include "calendar.h"
#include "check_output.h"
#include "check_totals.h"
#include "diagnostics.h"
#include "finish.h"
#include "grainside/checker.h"
#include "listing_run.h"
#include "load_book.h"
#include "output.h"

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
    "  grainside check --format sarif catalog.jsonl > check.sarif\n\n";

// A concession may name a limit, which the evidence half of the book knows. False where something is wrong.
bool load_concessions_of_check(const CheckCall& call, const RuleBook& book, ConcessionsOfCall& concessions,
                               Diagnostics& diagnostics) {
    if (call.concessions.files.empty()) return true;
    const std::optional<EvidenceBook> evidence = load_evidence(book, call.shared.rules_folder, diagnostics);
    return evidence && concessions.load(call.concessions, *evidence, diagnostics);
}

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
    add_rules_folder(*command, call->shared.rules_folder);
    command->add_flag("--quiet", call->quiet, "Write no findings; the exit status tells");
    command->footer(std::string(kExamples) + kExitStatusOfChecks);
    command->final_callback([call, &chosen] { chosen = [call] { return run_check(*call); }; });
}

int run_check(const CheckCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(call.shared.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    CheckOptions options = check_options_of(call.judged_for, *book, diagnostics);
    ProofsOfCall proofs;
    ConcessionsOfCall concessions;
    if (!proofs.load(call.proofs, *book, options, diagnostics) ||
        !load_concessions_of_check(call, *book, concessions, diagnostics) || diagnostics.any_errors()) {
        return finish(output, diagnostics, false);
    }
    if (options.on.empty()) options.on = today();

    Checker checker(*book, options);
    CheckOutput written(call, *book, checker, options, output.text());
    if (written.is_log()) diagnostics.keep_issues();
    written.begin();
    CheckTotals totals;
    for_each_listing(call.shared, diagnostics, [&](const Listing& listing, const std::string& input) {
        const CheckResult& result = checker.check(listing);
        report_fields_left_out(listing, result.fields_too_long, diagnostics);
        const Conceded* conceded = concessions.of_findings(*book, listing, result);
        totals.add(result, conceded);
        proofs.add(result.proofs_met);
        if (call.quiet) return true;
        written.write(input, listing, result, conceded);
        return output.keep_going();
    });
    proofs.report_unused(diagnostics);
    const bool stale = concessions.report_stale(true, diagnostics);
    written.end(totals, diagnostics);
    return finish(output, diagnostics,
                  stale || totals.worst() <= grade_named(call.fail_at).value_or(Grade::misleading));
}

}  // namespace grainside::tools
