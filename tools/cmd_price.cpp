#include "cmd_price.h"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "evidence/dossier_data.h"
#include "finish.h"
#include "grainside/cost.h"
#include "grainside/cost_report.h"
#include "load_book.h"
#include "output.h"
#include "terminal.h"

namespace grainside::tools {
namespace {

constexpr const char* kPriceFooter =
    "Examples:\n"
    "  grainside price tote.yaml\n"
    "  grainside price --what-if 'body leather: price 9.00 EUR/sq ft' tote.yaml\n"
    "  grainside price --what-if 'exchange: USD 0.92' tote.yaml\n"
    "  grainside price --format jsonl dossiers/*.yaml > costs.jsonl\n\n";

// 'ITEM: KEY VALUE'. The last colon counts, for an item may hold one.
std::optional<CostChange> change_of(std::string_view text) {
    const std::size_t colon = text.rfind(": ");
    if (colon == std::string_view::npos || colon == 0) return std::nullopt;
    const std::size_t key = text.find_first_not_of(' ', colon + 1);
    if (key == std::string_view::npos) return std::nullopt;
    const std::size_t end = text.find(' ', key);
    if (end == std::string_view::npos) return std::nullopt;
    const std::size_t value = text.find_first_not_of(' ', end);
    if (value == std::string_view::npos) return std::nullopt;
    return CostChange{std::string(text.substr(0, colon)), std::string(text.substr(key, end - key)),
                      std::string(text.substr(value))};
}

std::string check_change(const std::string& text) {
    if (change_of(text)) return {};
    return "'" + text + "' is not written as 'ITEM: KEY VALUE'";
}

// The estimate, with the changes where there are any; nothing where those have faults, which are reported then.
std::optional<CostEstimate> estimate_with(const EvidenceBook& evidence, const Dossier& dossier,
                                          const std::vector<CostChange>& changes, Diagnostics& diagnostics) {
    if (changes.empty()) return estimate_cost(evidence, dossier);
    Result<CostEstimate> changed = estimate_cost(evidence, dossier, changes);
    if (changed) return std::move(changed).value();
    std::vector<Issue> issues = std::move(changed).issues();
    // The fault is in the call; which dossier it does not fit is said behind.
    for (Issue& issue : issues) {
        issue.file = "--what-if";
        issue.message += " (in " + std::string(dossier.file()) + ")";
    }
    diagnostics.report(issues);
    return std::nullopt;
}

}  // namespace

void add_price(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<PriceCall>();
    CLI::App* command = app.add_subcommand("price", "Estimate what a sample costs, and its price multiple");
    add_dossiers(*command, call->shared);
    add_format(*command, call->shared.format,
               "one cost a line, a\nclosing line for each dossier, and one a seller where\nthere are several dossiers");
    command
        ->add_option("--what-if", call->what_if,
                     "Put a value in place of the dossier's, as in\n"
                     "'body leather: price 9.00 EUR/sq ft'; shown beside\n"
                     "what came out before. May be given several times")
        ->type_name("CHANGE")
        ->allow_extra_args(false)
        ->check(CLI::Validator(check_change, ""));
    command->footer(std::string(kPriceFooter) + kExitStatusOfDossiers);
    command->final_callback([call, &chosen] { chosen = [call] { return run_price(*call); }; });
}

int run_price(const PriceCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(call.shared.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    const std::optional<EvidenceBook> evidence = load_evidence(*book, call.shared.rules_folder, diagnostics);
    if (!evidence) return finish(output, diagnostics, false);

    std::vector<CostChange> changes;
    for (const std::string& text : call.what_if) {
        if (auto change = change_of(text)) changes.push_back(std::move(*change));
    }
    const ViewOptions view = view_options(call.shared.colour);
    const bool for_people = call.shared.format == "human";
    std::vector<PricedSample> samples;
    for_each_dossier(call.shared.dossiers, *evidence, diagnostics, [&](Dossier&& dossier) {
        std::optional<CostEstimate> cost = estimate_with(*evidence, dossier, changes, diagnostics);
        if (!cost) return true;
        std::optional<WhatIf> what_if;
        if (!changes.empty()) what_if = WhatIf{changes, estimate_cost(*evidence, dossier)};
        const DossierContext context{*book, *evidence, dossier};
        if (for_people) {
            write_price_view(context, *cost, what_if ? &*what_if : nullptr, view, output.text());
        } else {
            write_price_records(context, *cost, what_if ? &*what_if : nullptr, output.text());
        }
        samples.push_back({std::string(dossier.id()), dossier.data().seller, std::move(*cost)});
        return output.keep_going();
    });
    if (for_people) {
        write_price_comparison(*evidence, samples, view, output.text());
        if (!samples.empty()) write_price_end(*book, output.text());
    } else {
        write_comparison_records(samples, output.text());
    }
    return finish(output, diagnostics, false);
}

}  // namespace grainside::tools
