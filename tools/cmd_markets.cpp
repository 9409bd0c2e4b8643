#include "cmd_markets.h"

#include <algorithm>
#include <memory>
#include <optional>

#include "calendar.h"
#include "diagnostics.h"
#include "finish.h"
#include "grainside/market_report.h"
#include "listing_run.h"
#include "load_book.h"
#include "output.h"
#include "terminal.h"

namespace grainside::tools {
namespace {

constexpr const char* kMarketsFooter =
    "Examples:\n"
    "  grainside markets listing.txt\n"
    "  grainside markets --market us,uk,it --fail-at unsupported listing.md\n"
    "  grainside markets --on 2026-09-27 --format csv catalog.jsonl > markets.csv\n\n"
    "Exit status:\n"
    "  0  done, and every listing stands in every market that was asked for\n"
    "  1  done, and one does not: a finding there is at or above the grade of\n"
    "     --fail-at\n"
    "  2  an error: a wrong call, a file or record that cannot be read (the others\n"
    "     are checked all the same), output that cannot be written";

}  // namespace

void add_markets_command(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<MarketsCall>();
    CLI::App* command = app.add_subcommand("markets", "Say in which markets listings may stand as they are");
    add_inputs(*command, call->shared);
    add_asked_markets(*command, call->judged_for.markets);
    add_day(*command, "--on", call->judged_for.on, "Ask for this day and those behind it (default: today)");
    add_fail_at(*command, call->fail_at);
    command
        ->add_option("--format", call->shared.format,
                     "human (default), jsonl: one listing and market a line, or\ncsv: the same as rows of a table")
        ->type_name("FORMAT")
        ->check(one_of({"human", "jsonl", "csv"}));
    add_colour(*command, call->shared.colour);
    add_rules_folder(*command, call->shared.rules_folder);
    command->footer(kMarketsFooter);
    command->final_callback([call, &chosen] { chosen = [call] { return run_markets(*call); }; });
}

int run_markets(const MarketsCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(call.shared.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    const CheckOptions asked = check_options_of(call.judged_for, *book, diagnostics);
    if (diagnostics.any_errors()) return finish(output, diagnostics, false);

    MarketCheckOptions options;
    options.markets = asked.markets;
    options.on = asked.on.empty() ? today() : asked.on;
    options.fail_at = grade_named(call.fail_at).value_or(Grade::misleading);
    MarketCheck check(*book, std::move(options));
    const ViewOptions view = view_options(call.shared.colour);
    bool stands_everywhere = true;
    bool any = false;
    if (call.shared.format == "csv") write_market_columns(output.text());
    for_each_listing(call.shared, diagnostics, [&](const Listing& listing, const std::string&) {
        const MarketContext context{*book, listing, check.options(), check.check(listing)};
        report_fields_left_out(listing, check.fields_too_long(), diagnostics);
        any = true;
        stands_everywhere = stands_everywhere && std::all_of(context.answers.begin(), context.answers.end(),
                                                             [](const MarketAnswer& answer) { return answer.stands; });
        if (call.shared.format == "jsonl") {
            write_market_records(context, output.text());
        } else if (call.shared.format == "csv") {
            write_market_rows(context, output.text());
        } else {
            write_market_view(context, view, output.text());
        }
        return output.keep_going();
    });
    if (any && call.shared.format == "human") write_view_end(*book, output.text());
    return finish(output, diagnostics, !stands_everywhere);
}

}  // namespace grainside::tools
