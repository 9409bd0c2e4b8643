#include "cmd_claims.h"

#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "diagnostics.h"
#include "fields_left_out.h"
#include "finish.h"
#include "grainside/checker.h"
#include "grainside/report.h"
#include "interrupt.h"
#include "load_book.h"
#include "ordered_listings.h"
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

class ClaimsWorker final : public ListingWorker {
public:
    ClaimsWorker(const RuleBook& book, const SharedOptions& options)
        : book_(book),
          checker_(book),
          records_(book),
          view_(view_options(options.colour)),
          for_people_(options.format == "human") {}

    void handle(const Listing& listing, const std::string&, OutputPart& part, std::vector<Issue>& issues) override {
        const CheckResult& result = checker_.check(listing);
        if (auto issue = fields_left_out(listing, result.fields_too_long)) issues.push_back(std::move(*issue));
        if (for_people_) {
            write_claims_view(book_, listing, result, view_, part.text);
        } else {
            records_.write_claims(listing, result, part.text);
        }
    }

private:
    const RuleBook& book_;
    Checker checker_;
    RecordWriter records_;
    ViewOptions view_;
    bool for_people_;
};

}  // namespace

void add_claims(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<ClaimsCall>();
    CLI::App* command = app.add_subcommand("claims", "Show what listings assert, part by part");
    add_inputs(*command, call->shared);
    add_format(*command, call->shared.format, "one claim a line");
    add_colour(*command, call->shared.colour);
    add_run_options(*command, call->run);
    add_rules_folder(*command, call->shared.rules_folder);
    command->footer(kClaimsFooter);
    command->final_callback([call, &chosen] { chosen = [call] { return run_claims(*call); }; });
}

int run_claims(const ClaimsCall& given) {
    Diagnostics diagnostics;
    Output output;
    ClaimsCall call = given;
    call.shared.inputs = inputs_of(given.shared, diagnostics);
    const std::optional<RuleBook> book = load_book(call.shared.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);

    Interrupt interrupt;
    ListingWork work;
    work.make_worker = [&] { return std::make_unique<ClaimsWorker>(*book, call.shared); };
    run_listings(call.shared, call.run, work, interrupt, diagnostics, output);
    return interrupt.end(finish(output, diagnostics, false));
}

}  // namespace grainside::tools
