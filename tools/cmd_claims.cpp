#include "cmd_claims.h"

#include <memory>
#include <optional>

#include "diagnostics.h"
#include "finish.h"
#include "grainside/checker.h"
#include "grainside/report.h"
#include "listing_run.h"
#include "load_book.h"
#include "output.h"
#include "terminal.h"

namespace grainside::tools {
namespace {

constexpr const char* kClaimsFooter =
    "Examples:\n"
    "  grainside claims listing.txt\n"
    "  grainside claims --format jsonl catalog.jsonl > claims.jsonl\n\n"
    "Exit status:\n"
    "  0  done\n"
    "  2  an error: a wrong call, a file or record that cannot be read (the others\n"
    "     are read all the same), output that cannot be written";

}  // namespace

void add_claims(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<ClaimsCall>();
    CLI::App* command = app.add_subcommand("claims", "Show what listings assert, part by part");
    add_inputs(*command, call->shared);
    add_format(*command, call->shared.format, "one claim a line");
    add_colour(*command, call->shared.colour);
    add_rules_folder(*command, call->shared.rules_folder);
    command->footer(kClaimsFooter);
    command->final_callback([call, &chosen] { chosen = [call] { return run_claims(*call); }; });
}

int run_claims(const ClaimsCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(call.shared.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);

    Checker checker(*book);
    const RecordWriter records(*book);
    const ViewOptions view = view_options(call.shared.colour);
    const bool for_people = call.shared.format == "human";
    for_each_listing(call.shared, diagnostics, [&](const Listing& listing, const std::string&) {
        const CheckResult& result = checker.check(listing);
        report_fields_left_out(listing, result.fields_too_long, diagnostics);
        if (for_people) {
            write_claims_view(*book, listing, result, view, output.text());
        } else {
            records.write_claims(listing, result, output.text());
        }
        return output.keep_going();
    });
    return finish(output, diagnostics, false);
}

}  // namespace grainside::tools
