#include "cmd_rules_explain.h"

#include <memory>
#include <optional>

#include "diagnostics.h"
#include "finish.h"
#include "known_names.h"
#include "load_book.h"
#include "output.h"
#include "report/rule_view.h"
#include "terminal.h"

namespace grainside::tools {
namespace {

constexpr const char* kExplainFooter =
    "Examples:\n"
    "  grainside rules explain genuine-on-imitation\n"
    "  grainside rules explain --rules my-rules hand-dyed-and-printed\n\n"
    "Exit status: 0 done, 2 an error, such as an unknown rule.";

}  // namespace

void add_rules_explain(CLI::App& group, ChosenCommand& chosen) {
    const auto call = std::make_shared<ExplainCall>();
    CLI::App* command = group.add_subcommand("explain", "Explain one rule in sentences: what it flags, and why");
    command->add_option("rule", call->rule, "The rule's id")->type_name("RULE")->required();
    add_colour(*command, call->colour);
    add_rules_folder(*command, call->rules_folder);
    command->footer(kExplainFooter);
    command->final_callback([call, &chosen] { chosen = [call] { return run_rules_explain(*call); }; });
}

int run_rules_explain(const ExplainCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(call.rules_folder, diagnostics);
    if (book && is_known_rule(*book, call.rule, diagnostics)) {
        report::append_rule_explained(*book, *book->find_rule(call.rule), view_options(call.colour), output.text());
    }
    return finish(output, diagnostics, false);
}

}  // namespace grainside::tools
