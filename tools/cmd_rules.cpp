#include "cmd_rules.h"

#include <fmt/format.h>

#include <iterator>
#include <memory>
#include <optional>
#include <string_view>

#include "cmd_examine.h"
#include "cmd_rules_explain.h"
#include "cmd_rules_reference.h"
#include "diagnostics.h"
#include "document/inert_text.h"
#include "finish.h"
#include "judged_for.h"
#include "known_names.h"
#include "load_book.h"
#include "output.h"
#include "report/json_writer.h"
#include "report/rule_facts.h"
#include "rule_text.h"
#include "terminal.h"
#include "verdict/proof.h"

namespace grainside::tools {
namespace {

constexpr const char* kListFooter =
    "Examples:\n"
    "  grainside rules list\n"
    "  grainside rules list --group plating --market us,eu\n"
    "  grainside rules list --format jsonl --rules my-rules\n\n"
    "Exit status: 0 done, 2 an error.";
constexpr const char* kShowFooter =
    "Examples:\n"
    "  grainside rules show genuine-on-imitation\n\n"
    "Exit status: 0 done, 2 an error, such as an unknown rule.";
constexpr const char* kProveFooter =
    "Examples:\n"
    "  grainside rules prove\n"
    "  grainside rules prove --rules my-rules genuine-on-imitation\n\n"
    "Exit status:\n"
    "  0  every rule flags what its file says it must and passes the rest\n"
    "  1  one does not\n"
    "  2  an error, such as a rule folder that cannot be loaded; each fault of it is\n"
    "     reported";

using RunRules = int (*)(const RulesCall&);

CLI::App* add_command(CLI::App& group, const char* name, const char* what, const char* footer,
                      const std::shared_ptr<RulesCall>& call, RunRules run, ChosenCommand& chosen) {
    CLI::App* command = group.add_subcommand(name, what);
    add_rules_folder(*command, call->shared.rules_folder);
    command->footer(footer);
    command->final_callback([call, run, &chosen] { chosen = [call, run] { return run(*call); }; });
    return command;
}

void append_faults(const ProofReport& report, const std::string& folder, std::string& out) {
    for (const ProofFault& fault : report.faults) {
        fmt::format_to(std::back_inserter(out), "{}:{}: {}: {}\n  text: {}\n",
                       document::inert_text(rule_path(folder, fault.file)), fault.line,
                       document::inert_text(fault.rule), document::inert_text(fault.message),
                       document::inert_text(fault.text));
    }
    const auto counted = [](std::size_t count, std::string_view what) {
        return fmt::format("{} {}{}", count, what, count == 1 ? "" : "s");
    };
    fmt::format_to(std::back_inserter(out), "{}, {}, {}\n", counted(report.rules, "rule"),
                   counted(report.examples, "example"), counted(report.faults.size(), "fault"));
}

void append_fault_records(const ProofReport& report, const std::string& folder, std::string& out) {
    for (const ProofFault& fault : report.faults) {
        report::JsonWriter json(out);
        json.begin_object();
        json.member("rule", fault.rule);
        json.member("file", rule_path(folder, fault.file));
        json.member("line", std::uint64_t{fault.line});
        json.member("text", fault.text);
        json.member("message", fault.message);
        json.end_object();
        out += '\n';
    }
    report::JsonWriter json(out);
    json.begin_object();
    json.member("rules", std::uint64_t{report.rules});
    json.member("examples", std::uint64_t{report.examples});
    json.member("faults", std::uint64_t{report.faults.size()});
    json.end_object();
    out += '\n';
}

}  // namespace

void add_rules(CLI::App& app, ChosenCommand& chosen) {
    CLI::App* group = app.add_subcommand("rules", "Show the rule book, and have it prove and examine itself");
    group->require_subcommand(1);
    group->footer("`grainside rules COMMAND --help` has examples and the exit statuses of each.");

    const auto list = std::make_shared<RulesCall>();
    CLI::App* command = add_command(*group, "list", "List all rules", kListFooter, list, run_rules_list, chosen);
    command->add_option("--group", list->group, "Only the rules about this subject, such as plating")
        ->type_name("GROUP");
    add_made_for(*command, list->markets, "rules made for");
    add_format(*command, list->shared.format, "one rule a line");

    const auto show = std::make_shared<RulesCall>();
    command = add_command(*group, "show", "Show all of one rule: reason, sources and proof", kShowFooter, show,
                          run_rules_show, chosen);
    command->add_option("rule", show->rule, "The rule's id")->type_name("RULE")->required();
    add_format(*command, show->shared.format, "the same as one object");

    const auto prove = std::make_shared<RulesCall>();
    command = add_command(*group, "prove", "Check that each rule flags and passes what its file says", kProveFooter,
                          prove, run_rules_prove, chosen);
    command->add_option("rule", prove->rule, "Only this rule")->type_name("RULE");
    add_format(*command, prove->shared.format, "one fault a line,\nand a closing line with the counts");

    add_examine(*group, chosen);
    add_rules_explain(*group, chosen);
    add_rules_reference(*group, chosen);
}

int run_rules_list(const RulesCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(call.shared.rules_folder, diagnostics);
    if (!book) return finish(output, diagnostics, false);
    const std::vector<std::string> markets = known_markets(call.markets, *book, diagnostics);
    if (!call.group.empty()) is_known_group(*book, call.group, diagnostics);
    if (diagnostics.any_errors()) return finish(output, diagnostics, false);
    std::vector<const RuleInfo*> rules;
    for (const RuleInfo& rule : book->rules()) {
        const bool of_group = call.group.empty() || rule.group == call.group;
        if (of_group && report::is_made_for_any(*book, rule.markets, markets)) rules.push_back(&rule);
    }
    if (call.shared.format == "human") {
        append_rule_table(rules, output.text());
    } else {
        for (const RuleInfo* rule : rules) {
            append_rule_record(*book, *rule, call.shared.rules_folder, RuleDetail::summary, output.text());
        }
    }
    return finish(output, diagnostics, false);
}

int run_rules_show(const RulesCall& call) {
    Diagnostics diagnostics;
    Output output;
    const std::optional<RuleBook> book = load_book(call.shared.rules_folder, diagnostics);
    if (book && is_known_rule(*book, call.rule, diagnostics)) {
        const RuleInfo& rule = *book->find_rule(call.rule);
        if (call.shared.format == "human") {
            append_rule_text(*book, rule, call.shared.rules_folder, view_options("never").width, output.text());
        } else {
            append_rule_record(*book, rule, call.shared.rules_folder, RuleDetail::everything, output.text());
        }
    }
    return finish(output, diagnostics, false);
}

int run_rules_prove(const RulesCall& call) {
    Diagnostics diagnostics;
    Output output;
    bool faulty = false;
    const std::optional<RuleBook> book = load_book(call.shared.rules_folder, diagnostics);
    if (book && (call.rule.empty() || is_known_rule(*book, call.rule, diagnostics))) {
        const ProofReport report = prove(*book, call.rule);
        faulty = !report.faults.empty();
        if (call.shared.format == "human") {
            append_faults(report, call.shared.rules_folder, output.text());
        } else {
            append_fault_records(report, call.shared.rules_folder, output.text());
        }
    }
    return finish(output, diagnostics, faulty);
}

}  // namespace grainside::tools
