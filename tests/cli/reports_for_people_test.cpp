// Design section 7, 7: every report for people says what it is not.
#include <string>
#include <string_view>
#include <vector>

#include "cli_test.h"

namespace grainside::tests {
namespace {

struct Report {
    std::string_view name;
    std::vector<std::string> call;
};

std::vector<Report> reports() {
    const std::string dossier = GRAINSIDE_DOSSIERS "/bonded_belt.yaml";
    return {{"check", {"check", "bag.txt"}},
            {"check_without_findings", {"check", "plain.txt"}},
            {"markets", {"markets", "--market", "us,eu", "bag.txt"}},
            {"survey", {"survey", "bag.txt", "plain.txt"}},
            {"survey_page", {"survey", "--format", "html", "bag.txt"}},
            {"survey_table", {"survey", "--format", "csv", "bag.txt"}},
            {"judge", {"judge", dossier}},
            {"identify", {"identify", dossier}},
            {"plan", {"plan", dossier}},
            {"price", {"price", dossier}},
            {"report", {"report", dossier}},
            {"report_markdown", {"report", "--format", "markdown", dossier}},
            {"rules_explain", {"rules", "explain", "generic-green"}},
            {"rules_reference", {"rules", "reference"}}};
}

class ReportsForPeople : public CliTest {};

TEST_F(ReportsForPeople, SayWhatTheyAreNot) {
    write_file("bag.txt", "Genuine PU leather bag\n");
    write_file("plain.txt", "Bag of cotton\n");
    for (const Report& report : reports()) {
        const ProcessResult result = run(report.call);
        EXPECT_LE(result.status, 1) << report.name << result.err;
        std::string text;
        for (const char c : result.out) text += c == '\n' ? ' ' : c;
        EXPECT_NE(text.find("not legal advice; local law and licensed practice decide"), std::string::npos)
            << report.name;
    }
}

}  // namespace
}  // namespace grainside::tests
