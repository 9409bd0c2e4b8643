// Help, version, wrong calls, and the manual page against the help.
#include <re2/re2.h>

#include <set>
#include <string>
#include <string_view>

#include "cli_test.h"
#include "grainside/version.h"

namespace grainside::tests {
namespace {

using Call = CliTest;

struct WrongRow {
    std::string_view name;
    std::vector<std::string> arguments;
    std::string_view err;
};

const WrongRow kWrong[] = {
    {"nothing", {}, "grainside: error: A command is required\n  hint: see `grainside --help`\n"},
    {"unknown_command", {"chekc"}, "grainside: error: there is no command 'chekc'\n  hint: did you mean `check`?\n"},
    {"unknown_far", {"dissect"}, "grainside: error: there is no command 'dissect'\n  hint: see `grainside --help`\n"},
    {"unknown_option",
     {"check", "--formt", "x"},
     "grainside: error: The following argument was not expected: --formt\n  hint: did you mean `--format`?\n"},
    {"format",
     {"check", "--format", "xml"},
     "grainside: error: --format: 'xml' is none of human, jsonl, sarif\n  hint: see `grainside check --help`\n"},
    {"input",
     {"claims", "--input", "xls"},
     "grainside: error: --input: 'xls' is none of text, markdown, json, jsonl, csv, tsv, html, auto\n  hint: see "
     "`grainside "
     "claims "
     "--help`\n"},
    {"columns_without_member",
     {"check", "--columns", "Titel"},
     "grainside: error: --columns: 'Titel' is not written as COLUMN=MEMBER\n  hint: see `grainside check --help`\n"},
    {"columns_of_no_member",
     {"check", "--columns", "Titel=titel"},
     "grainside: error: --columns: 'titel' is none of name, description, material, category, property, "
     "additionalProperty.NAME, id, language, region, seller, skip\n  hint: see `grainside check --help`\n"},
    {"separator",
     {"check", "--separator", "x"},
     "grainside: error: --separator: 'x' is none of ,, ;, |, :, tab\n  hint: see `grainside check --help`\n"},
    {"colour",
     {"check", "--colour", "red"},
     "grainside: error: --colour: 'red' is none of auto, always, never\n  hint: see `grainside check --help`\n"},
    {"fail_at",
     {"check", "--fail-at", "bad"},
     "grainside: error: --fail-at: 'bad' is none of contradicted, misleading, unsupported, inconclusive, vague\n  "
     "hint: see `grainside check --help`\n"},
    {"port",
     {"desk", "--port", "70000"},
     "grainside: error: --port: '70000' is no port, a number from 1 to 65535\n  hint: see `grainside desk --help`\n"},
    {"no_such_day",
     {"check", "--on", "2026-02-29"},
     "grainside: error: --on: '2026-02-29' is no day written as YYYY-MM-DD\n  hint: see `grainside check --help`\n"},
    {"day_in_other_order",
     {"check", "--on", "27-09-2026"},
     "grainside: error: --on: '27-09-2026' is no day written as YYYY-MM-DD\n  hint: see `grainside check --help`\n"},
    {"value_missing",
     {"check", "--on"},
     "grainside: error: --on: 1 required YYYY-MM-DD missing\n  hint: see `grainside check --help`\n"},
    {"rules_alone", {"rules"}, "grainside: error: A subcommand is required\n  hint: see `grainside rules --help`\n"},
    {"rule_missing",
     {"rules", "show"},
     "grainside: error: rule is required\n  hint: see `grainside rules show --help`\n"},
    {"market_on_claims",
     {"claims", "--market", "us"},
     "grainside: error: The following argument was not expected: --market\n  hint: see `grainside claims --help`\n"},
    {"hostile",
     {"check", "--format", "\x1B[2J\n\xFF"},
     "grainside: error: --format: '?[2J ?' is none of human, jsonl, sarif\n  hint: see `grainside check --help`\n"},
};

TEST_F(Call, ExitsWithTwoWhereItIsWrong) {
    for (const WrongRow& row : kWrong) {
        const ProcessResult result = run(row.arguments);
        EXPECT_EQ(result.status, 2) << row.name;
        EXPECT_EQ(result.out, "") << row.name;
        EXPECT_EQ(result.err, row.err) << row.name;
    }
}

TEST_F(Call, PrintsItsVersion) {
    const ProcessResult result = run({"--version"});
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(result.err, "");
    const std::string form = "grainside " + RE2::QuoteMeta(std::string(kVersion)) +
                             "\nrule book [0-9a-f]{16}: [0-9]+ rules, [0-9]+ concepts, [0-9]+ term forms\n";
    EXPECT_TRUE(RE2::FullMatch(result.out, form)) << result.out;
}

const std::vector<std::vector<std::string>>& commands() {
    static const std::vector<std::vector<std::string>> kCommands = {{},
                                                                    {"check"},
                                                                    {"claims"},
                                                                    {"reword"},
                                                                    {"judge"},
                                                                    {"identify"},
                                                                    {"plan"},
                                                                    {"price"},
                                                                    {"report"},
                                                                    {"learn"},
                                                                    {"rules"},
                                                                    {"rules", "list"},
                                                                    {"rules", "show"},
                                                                    {"rules", "prove"},
                                                                    {"rules", "examine"},
                                                                    {"rules", "explain"},
                                                                    {"rules", "reference"},
                                                                    {"sources"},
                                                                    {"markets"},
                                                                    {"survey"},
                                                                    {"desk"}};
    return kCommands;
}

std::string help_of(const ProcessResult& result) {
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(result.err, "");
    return result.out;
}

TEST_F(Call, HelpsWithinEightyColumns) {
    for (const std::vector<std::string>& command : commands()) {
        std::vector<std::string> arguments = command;
        arguments.emplace_back("--help");
        for (const std::string& line : lines_of(help_of(run(arguments)))) EXPECT_LE(line.size(), 81U) << line;
    }
}

TEST_F(Call, HelpsWithExamplesAndExitStatus) {
    for (const std::vector<std::string>& command : commands()) {
        const bool runs = !command.empty() && command.back() != "rules";
        if (!runs) continue;
        std::vector<std::string> arguments = command;
        arguments.emplace_back("-h");
        const std::string help = help_of(run(arguments));
        EXPECT_NE(help.find("Examples:\n  grainside " + command.front()), std::string::npos) << help;
        EXPECT_NE(help.find("Exit status:"), std::string::npos) << help;
    }
}

std::set<std::string> long_options(const std::string& text) {
    std::set<std::string> options;
    const RE2 form("(--[a-z][a-z-]*)");
    re2::StringPiece rest(text);
    for (std::string option; RE2::FindAndConsume(&rest, form, &option);) options.insert(option);
    return options;
}

TEST_F(Call, HasEveryOptionInItsManualPage) {
    std::string help;
    for (std::vector<std::string> command : commands()) {
        command.emplace_back("--help");
        help += help_of(run(command));
    }
    std::string page = read_file(GRAINSIDE_MANUAL_PAGE);
    RE2::GlobalReplace(&page, R"(\\-)", "-");
    EXPECT_EQ(long_options(page), long_options(help));
    for (const std::vector<std::string>& command : commands()) {
        std::string name;
        for (const std::string& word : command) name += (name.empty() ? "" : " ") + word;
        if (name.empty() || name == "rules") continue;
        EXPECT_NE(page.find(".TP\n.B " + name + "\n"), std::string::npos) << name << " is not among the commands";
    }
}

}  // namespace
}  // namespace grainside::tests
