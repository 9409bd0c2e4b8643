#include "cmd_check.h"

#include <memory>
#include <optional>

#include "calendar.h"
#include "check_totals.h"
#include "diagnostics.h"
#include "finish.h"
#include "grainside/report.h"
#include "listing_run.h"
#include "load_book.h"
#include "output.h"
#include "terminal.h"

namespace grainside::tools {
namespace {

constexpr const char* kExamples =
    "Examples:\n"
    "  grainside check listing.txt\n"
    "  echo 'Genuine PU leather tote' | grainside check\n"
    "  grainside check --format jsonl --market us,eu catalog.jsonl > findings.jsonl\n"
    "  grainside check --quiet --fail-at unsupported --on 2026-09-27 catalog.jsonl\n\n";

}  // namespace

void add_check(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<CheckCall>();
    CLI::App* command = app.add_subcommand("check", "Find what listings may not say, and why");
    add_inputs(*command, call->shared);
    add_judged_for(*command, call->judged_for, "today");
    add_fail_at(*command, call->fail_at);
    add_format(*command, call->shared.format, "one finding a line,\nand a closing line for each listing");
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
    if (diagnostics.any_errors()) return finish(output, diagnostics, false);
    if (options.on.empty()) options.on = today();

    Checker checker(*book, options);
    const RecordWriter records(*book);
    const ViewOptions view = view_options(call.shared.colour);
    const bool for_people = call.shared.format == "human" && !call.quiet;
    CheckTotals totals;
    bool after_quiet_line = false;
    for_each_listing(call.shared, diagnostics, [&](const Listing& listing) {
        const CheckResult& result = checker.check(listing);
        report_fields_left_out(listing, result, diagnostics);
        totals.add(result);
        if (call.quiet) return true;
        if (for_people) {
            if (after_quiet_line && !result.findings.empty()) output.text() += '\n';
            after_quiet_line = result.findings.empty();
            write_view(*book, listing, result, checker, view, output.text());
        } else {
            records.write_findings(listing, result, checker, output.text());
        }
        return output.keep_going();
    });
    if (for_people && totals.listings() > 0) {
        if (after_quiet_line) output.text() += '\n';
        totals.append_text(output.text());
        write_view_end(*book, output.text());
    }
    return finish(output, diagnostics, totals.worst() <= grade_named(call.fail_at).value_or(Grade::misleading));
}

}  // namespace grainside::tools
