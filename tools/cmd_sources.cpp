#include "cmd_sources.h"

#include <cstddef>
#include <memory>
#include <optional>

#include "diagnostics.h"
#include "finish.h"
#include "judged_for.h"
#include "known_names.h"
#include "load_book.h"
#include "output.h"
#include "report/source_view.h"
#include "terminal.h"

namespace grainside::tools {
namespace {

constexpr const char* kSourcesFooter =
    "Examples:\n"
    "  grainside sources\n"
    "  grainside sources us-16cfr24-2-b\n"
    "  grainside sources --market it,fr --format jsonl\n\n"
    "Exit status: 0 done, 2 an error, such as an unknown source.";

void append_sources(const SourcesCall& call, const RuleBook& book, const EvidenceBook* evidence,
                    const std::vector<std::string>& markets, std::string& out) {
    const std::vector<report::SourceUses> uses = report::uses_of_sources(book, evidence);
    const ViewOptions options = view_options(call.colour);
    bool first = true;
    for (std::size_t at = 0; at < uses.size(); ++at) {
        const SourceInfo& source = book.sources()[at];
        if (!call.source.empty() && source.id != call.source) continue;
        if (!report::is_cited_for(book, uses[at], markets)) continue;
        if (call.format == "jsonl") {
            report::append_source_record(source, uses[at], out);
            continue;
        }
        if (!first) out += '\n';
        first = false;
        if (call.source.empty()) {
            report::append_source_summary(source, uses[at], options, out);
        } else {
            report::append_source_page(source, uses[at], options, out);
        }
    }
}

}  // namespace

void add_sources(CLI::App& app, ChosenCommand& chosen) {
    const auto call = std::make_shared<SourcesCall>();
    CLI::App* command = app.add_subcommand("sources", "Show the sources of the rule book, and what cites them");
    CLI::Option* source =
        command->add_option("source", call->source, "Only this one, with all that cites it")->type_name("SOURCE");
    add_made_for(*command, call->markets, "sources cited for")->excludes(source);
    add_format(*command, call->format, "one source a line");
    add_colour(*command, call->colour);
    add_rules_folder(*command, call->rules_folder);
    command->footer(kSourcesFooter);
    command->final_callback([call, &chosen] { chosen = [call] { return run_sources(*call); }; });
}

int run_sources(const SourcesCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(call.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    const std::optional<EvidenceBook> evidence = load_evidence_if_any(*book, call.rules_folder, diagnostics);
    const std::vector<std::string> markets = known_markets(call.markets, *book, diagnostics);
    if (!call.source.empty()) is_known_source(*book, call.source, diagnostics);
    if (!diagnostics.any_errors()) {
        append_sources(call, *book, evidence ? &*evidence : nullptr, markets, output.text());
    }
    return finish(output, diagnostics, false);
}

}  // namespace grainside::tools
