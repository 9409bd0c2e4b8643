#include "cmd_check.h"

#include <algorithm>
#include <cstdint>
#include <memory>
#include <optional>
#include <string_view>

#include "calendar.h"
#include "check_totals.h"
#include "diagnostics.h"
#include "document/faults.h"
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

std::string in_lower_case(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return text;
}

// The markets in the letters of the book; unknown ones are reported.
std::vector<std::string> known_markets(const std::vector<std::string>& asked, const RuleBook& book,
                                       Diagnostics& diagnostics) {
    const std::vector<std::string> known = book.markets();
    const std::vector<std::string_view> names(known.begin(), known.end());
    std::vector<std::string> markets;
    for (const std::string& name : asked) {
        std::string market = in_lower_case(name);
        if (std::find(names.begin(), names.end(), market) == names.end()) {
            std::string all;
            for (const std::string_view one : names) all.append(all.empty() ? "the book has " : ", ").append(one);
            diagnostics.error("--market: there is no market '" + name + "'", all);
        } else if (std::find(markets.begin(), markets.end(), market) == markets.end()) {
            markets.push_back(std::move(market));
        }
    }
    return markets;
}

}  // namespace

void add_check(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<CheckCall>();
    CLI::App* command = app.add_subcommand("check", "Find what listings may not say, and why");
    add_inputs(*command, call->shared);
    command
        ->add_option("--market", call->markets,
                     "Apply the rules of these markets, as in us,eu\n"
                     "besides those of every market (default: of the region\n"
                     "that the listing states)")
        ->type_name("M[,M...]")
        ->delimiter(',')
        ->allow_extra_args(false);
    command->add_option("--on", call->on, "Apply the rules in force on this day (default: today)")
        ->type_name("YYYY-MM-DD")
        ->check(CLI::Validator(
            [](const std::string& day) -> std::string {
                return is_day(day) ? std::string() : "'" + day + "' is no day written as YYYY-MM-DD";
            },
            ""));
    command
        ->add_option("--fail-at", call->fail_at,
                     "Exit with 1 at this grade or a worse one: contradicted,\n"
                     "misleading (default), unsupported, inconclusive, vague")
        ->type_name("GRADE")
        ->check(one_of({"contradicted", "misleading", "unsupported", "inconclusive", "vague"}));
    add_format(*command, call->shared, "one finding a line,\nand a closing line for each listing");
    add_colour(*command, call->shared);
    add_rules_folder(*command, call->shared);
    command->add_flag("--quiet", call->quiet, "Write no findings; the exit status tells");
    command->footer(std::string(kExamples) + kExitStatusOfChecks);
    command->final_callback([call, &chosen] { chosen = [call] { return run_check(*call); }; });
}

int run_check(const CheckCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(call.shared.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    CheckOptions options;
    options.markets = known_markets(call.markets, *book, diagnostics);
    if (diagnostics.any_errors()) return finish(output, diagnostics, false);
    options.on = call.on.empty() ? today() : call.on;

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
