#include "judged_for.h"

#include <algorithm>
#include <string_view>
#include <utility>

#include "calendar.h"
#include "call_options.h"

namespace grainside::tools {
namespace {

std::string in_lower_case(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return text;
}

CLI::Option* add_markets(CLI::App& command, std::vector<std::string>& markets, const std::string& help) {
    return command.add_option("--market", markets, help)
        ->type_name("M[,M...]")
        ->delimiter(',')
        ->allow_extra_args(false);
}

}  // namespace

void add_judged_for(CLI::App& command, JudgedFor& options, const std::string& default_day) {
    add_markets(command, options.markets,
                "Apply the rules of these markets, as in us,eu\n"
                "besides those of every market (default: of the region\n"
                "that the listing states)");
    add_day(command, "--on", options.on, "Apply the rules in force on this day (default:\n" + default_day + ")");
}

CLI::Option* add_made_for(CLI::App& command, std::vector<std::string>& markets, const std::string& what) {
    return add_markets(command, markets,
                       "Only " + what + " these markets, or a larger\none that they lie within, as in us,it");
}

void add_asked_markets(CLI::App& command, std::vector<std::string>& markets) {
    add_markets(command, markets, "Ask these markets only, as in us,eu (default: every\nmarket of the book)");
}

void add_day(CLI::App& command, const std::string& name, std::string& day, const std::string& help) {
    command.add_option(name, day, help)
        ->type_name("YYYY-MM-DD")
        ->check(CLI::Validator(
            [](const std::string& text) -> std::string {
                return is_day(text) ? std::string() : "'" + text + "' is no day written as YYYY-MM-DD";
            },
            ""));
}

void add_decision_rule(CLI::App& command, std::string& rule) {
    command
        .add_option("--decide", rule,
                    "How a value is held against a limit (JCGM 106):\n"
                    "both-guarded (default), simple-acceptance,\n"
                    "guarded-acceptance, guarded-rejection")
        ->type_name("RULE")
        ->check(one_of({"both-guarded", "simple-acceptance", "guarded-acceptance", "guarded-rejection"}));
}

void add_fail_at(CLI::App& command, std::string& grade) {
    command
        .add_option("--fail-at", grade,
                    "Exit with 1 at this grade or a worse one: contradicted,\n"
                    "misleading (default), unsupported, inconclusive, vague")
        ->type_name("GRADE")
        ->check(one_of({"contradicted", "misleading", "unsupported", "inconclusive", "vague"}));
}

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

CheckOptions check_options_of(const JudgedFor& asked, const RuleBook& book, Diagnostics& diagnostics) {
    CheckOptions options;
    options.markets = known_markets(asked.markets, book, diagnostics);
    options.on = asked.on;
    return options;
}

}  // namespace grainside::tools
