// grainside judge, identify, plan and learn where something is wrong: the call, a dossier, the rule folder.
#include <filesystem>
#include <string>
#include <vector>

#include "cli_test.h"
#include "small_dossiers.h"

namespace grainside::tests {
namespace {

const std::vector<std::string> kCommands = {"judge", "identify", "plan", "learn"};

class DossierFaults : public CliTest {
protected:
    void SetUp() override {
        CliTest::SetUp();
        write_small_evidence("book");
    }
    ProcessResult run_small(std::vector<std::string> arguments) const {
        arguments.insert(arguments.end(), {"--rules", "book"});
        return run(std::move(arguments));
    }
};

struct WrongRow {
    std::string_view name;
    std::vector<std::string> arguments;
    std::string_view err;
};

const WrongRow kWrong[] = {
    {"no_dossier", {"judge"}, "grainside: error: dossiers is required\n  hint: see `grainside judge --help`\n"},
    {"no_dossier_to_learn",
     {"learn", "--weight", "5"},
     "grainside: error: dossiers is required\n  hint: see `grainside learn --help`\n"},
    {"near_option",
     {"judge", "--decid", "x"},
     "grainside: error: The following argument was not expected: --decid\n  hint: did you mean `--decide`?\n"},
    {"decision_rule",
     {"judge", "--decide", "strict", "a.yaml"},
     "grainside: error: --decide: 'strict' is none of both-guarded, simple-acceptance, guarded-acceptance, "
     "guarded-rejection\n  hint: see `grainside judge --help`\n"},
    {"grade",
     {"judge", "--fail-at", "bad", "a.yaml"},
     "grainside: error: --fail-at: 'bad' is none of contradicted, misleading, unsupported, inconclusive, vague\n  "
     "hint: see `grainside judge --help`\n"},
    {"day",
     {"plan", "--on", "2026-02-29", "a.yaml"},
     "grainside: error: --on: '2026-02-29' is no day written as YYYY-MM-DD\n  hint: see `grainside plan --help`\n"},
    {"format",
     {"identify", "--format", "xml", "a.yaml"},
     "grainside: error: --format: 'xml' is none of human, jsonl\n  hint: see `grainside identify --help`\n"},
    {"market_on_identify",
     {"identify", "--market", "us", "a.yaml"},
     "grainside: error: The following argument was not expected: --market\n  hint: see `grainside identify --help`\n"},
    {"grade_on_plan",
     {"plan", "--fail-at", "vague", "a.yaml"},
     "grainside: error: The following argument was not expected: --fail-at\n  hint: see `grainside plan --help`\n"},
};

TEST_F(DossierFaults, OfTheCallAreTold) {
    for (const WrongRow& row : kWrong) {
        const ProcessResult result = run(row.arguments);
        EXPECT_EQ(result.status, 2) << row.name;
        EXPECT_EQ(result.out, "") << row.name;
        EXPECT_EQ(result.err, row.err) << row.name;
    }
}

TEST_F(DossierFaults, OfAWeightAreTold) {
    write_file("tote.yaml", kConfirmedDossier);
    for (const std::string weight : {"0", "-1", "many", "nan", "1e12"}) {
        const ProcessResult result = run_small({"learn", "--weight", weight, "tote.yaml"});
        EXPECT_EQ(result.status, 2) << weight;
        EXPECT_EQ(result.out, "") << weight;
        EXPECT_EQ(result.err, "grainside: error: --weight: '" + weight +
                                  "' is no number from 0.001 to 1000000000\n  hint: see `grainside learn --help`\n");
    }
}

TEST_F(DossierFaults, OfAMarketAreTold) {
    write_file("tote.yaml", kClearDossier);
    for (const std::string command : {"judge", "plan"}) {
        const ProcessResult result = run_small({command, "--market", "eu,mars", "tote.yaml"});
        EXPECT_EQ(result.status, 2);
        EXPECT_EQ(result.out, "");
        EXPECT_EQ(result.err, "grainside: error: --market: there is no market 'mars'\n  hint: the book has us, eu\n");
    }
}

TEST_F(DossierFaults, LeaveTheOtherDossiersAlone) {
    write_file("good.yaml", kClearDossier);
    write_file("broken.yaml", kBrokenDossier);
    write_file("other.yaml", kThinDossier);
    write_file("confirmed.yaml", kConfirmedDossier);
    std::filesystem::create_directory(folder() / "folder");
    const std::vector<std::string> files = {"good.yaml", "broken.yaml", "missing.yaml",
                                            "folder",    "other.yaml",  "confirmed.yaml"};
    const std::string err =
        "grainside: broken.yaml:4:14: error: there is no method 'flamme' [unknown-method]\n"
        "      {method: flamme, outcome: melts},\n"
        "               ^\n"
        "  hint: did you mean `flame`?\n"
        "grainside: broken.yaml:5:29: error: '0.2 mm' says nothing of its uncertainty [no-uncertainty]\n"
        "      {method: section, coat: 0.2 mm}]}\n"
        "                              ^\n"
        "  hint: ";
    for (const std::string& command : kCommands) {
        std::vector<std::string> arguments = {command, "--format", "jsonl"};
        arguments.insert(arguments.end(), files.begin(), files.end());
        const ProcessResult result = run_small(arguments);
        EXPECT_EQ(result.status, 2) << command;
        EXPECT_EQ(result.err.rfind(err, 0), 0U) << result.err;
        EXPECT_EQ(count_of(result.err, "grainside: "), 4U) << result.err;
        EXPECT_NE(result.err.find("\ngrainside: missing.yaml: error: the dossier cannot be read"), std::string::npos);
        EXPECT_NE(result.err.find("\ngrainside: folder: error: this is a folder, not a dossier [unreadable]\n"
                                  "  hint: name the files, as in `folder/*.yaml`\n"),
                  std::string::npos)
            << result.err;
        EXPECT_EQ(result.out.find("broken"), std::string::npos) << result.out;
        // The good ones come out as they do without the broken one.
        const std::string good =
            run_small({command, "--format", "jsonl", "good.yaml", "other.yaml", "confirmed.yaml"}).out;
        EXPECT_EQ(result.out, good) << command;
    }
}

TEST_F(DossierFaults, OfStandardInputHaveTheirPlace) {
    write_file("good.yaml", kThinDossier);
    for (const std::string& command : kCommands) {
        const ProcessResult result =
            run_with_input({command, "--format", "jsonl", "-", "good.yaml", "--rules", "book"}, kBrokenDossier);
        EXPECT_EQ(result.status, 2) << command;
        EXPECT_EQ(result.err.rfind("grainside: <stdin>:4:14: error: there is no method 'flamme' [unknown-method]\n", 0),
                  0U)
            << result.err;
        EXPECT_EQ(result.out, run_small({command, "--format", "jsonl", "good.yaml"}).out) << command;
        const ProcessResult nothing = run_with_input({command, "--format", "jsonl", "-", "--rules", "book"}, "");
        EXPECT_EQ(nothing.status, 2) << command;
        EXPECT_EQ(nothing.err.rfind("grainside: <stdin>: error: ", 0), 0U) << nothing.err;
    }
}

// A dossier holds at most 4 MiB; a longer one is refused, not cut off.
TEST_F(DossierFaults, OfALongStandardInput) {
    const std::string text = std::string(kThinDossier) + '#' + std::string(std::size_t{4} << 20, 'x') + '\n';
    const ProcessResult result = run_with_input({"judge", "-", "--rules", "book"}, text);
    EXPECT_EQ(result.status, 2);
    EXPECT_EQ(result.out, "");
    EXPECT_EQ(result.err.rfind("grainside: <stdin>: error: ", 0), 0U) << result.err;
}

TEST_F(DossierFaults, OfTheYamlHaveTheirPlace) {
    write_file("tote.yaml", "sample: {what: [}\n");
    for (const std::string& command : kCommands) {
        const ProcessResult result = run_small({command, "tote.yaml", "--format", "jsonl"});
        EXPECT_EQ(result.status, 2);
        EXPECT_EQ(result.err.rfind("grainside: tote.yaml:1:17: error: this is not valid YAML", 0), 0U) << result.err;
    }
}

TEST_F(DossierFaults, OfAListingOutsideTheFolder) {
    write_file("words.txt", "Cotton tote");
    write_file("sent/tote.yaml", "sample: {what: Tote}\nlisting: {file: ../words.txt}\n");
    for (const std::string& command : kCommands) {
        const ProcessResult result = run_small({command, "sent/tote.yaml", "--format", "jsonl"});
        EXPECT_EQ(result.status, 2);
        EXPECT_EQ(result.err.rfind("grainside: sent/tote.yaml:2:17: error: ", 0), 0U) << result.err;
        EXPECT_NE(result.err.find("[outside-folder]"), std::string::npos) << result.err;
    }
}

TEST_F(DossierFaults, OfOneKindAreWarnings) {
    write_file("tote.yaml",
               "sample: {what: Tote, bought: 2024-08-14}\n"
               "parts: {body: {readings: [{method: look, outcome: film, date: 2024-08-01}]}}\n");
    const ProcessResult result = run_small({"identify", "tote.yaml", "--format", "jsonl"});
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(lines_of(result.out).size(), 2U);
    EXPECT_EQ(result.err.rfind("grainside: tote.yaml:2:63: warning: 2024-08-01 is before the purchase", 0), 0U)
        << result.err;
}

TEST_F(DossierFaults, OfAFolderWithoutEvidenceAreClear) {
    write_small_book("words");
    write_file("tote.yaml", kClearDossier);
    for (const std::string& command : kCommands) {
        const ProcessResult result = run({command, "tote.yaml", "--rules", "words"});
        EXPECT_EQ(result.status, 2);
        EXPECT_EQ(result.out, "");
        EXPECT_EQ(result.err,
                  "grainside: words/candidates.yaml: error: the rule folder has no candidates.yaml [missing-file]\n"
                  "  hint: rules/EVIDENCE.md, section 1, describes it\n"
                  "grainside: words/judging.yaml: error: the rule folder has no judging.yaml [missing-file]\n"
                  "  hint: rules/EVIDENCE.md, section 5, shows one\n")
            << command;
    }
    EXPECT_EQ(run_with_input({"check", "--rules", "words"}, "Wood.").status, 0) << "wording needs no evidence";
}

TEST_F(DossierFaults, OfTheEvidenceHaveTheirPlace) {
    write_file("tote.yaml", kClearDossier);
    std::string judging = read_file(folder() / "book/judging.yaml");
    judging.replace(judging.find("95"), 2, "195");
    write_file("book/judging.yaml", judging);
    std::string methods = read_file(folder() / "book/methods/small.yaml");
    methods.replace(methods.find("film: 80"), 8, "film: 70");
    write_file("book/methods/small.yaml", methods);
    for (const std::string& command : kCommands) {
        const ProcessResult result = run_small({command, "tote.yaml"});
        EXPECT_EQ(result.status, 2);
        EXPECT_EQ(result.out, "");
        EXPECT_EQ(count_of(result.err, "grainside: "), 2U) << result.err;
        EXPECT_NE(result.err.find("grainside: book/judging.yaml:1:13: error: 195 is not from 50 to 100 "
                                  "[out-of-range]\n  decided_at: 195\n              ^\n"),
                  std::string::npos)
            << result.err;
        EXPECT_NE(result.err.find("grainside: book/methods/small.yaml:13:7: error: "), std::string::npos) << result.err;
        EXPECT_NE(result.err.find("[row-sum]"), std::string::npos) << result.err;
    }
}

// Keys and words of rules/EVIDENCE.md, section 5.
TEST_F(DossierFaults, OfTheRulesOfJudgingAreTold) {
    write_file("tote.yaml", kClearDossier);
    struct Row {
        std::string from, to, place, code;
    };
    const Row rows[] = {
        {"from_even: 80", "from_even: 49", "2:12", "out-of-range"},
        {"from_even: 80", "from_even: 101", "2:12", "out-of-range"},
        {"from_even: 80\n", "", "1:1", "missing-key"},
        {"practised: 1,", "practised: 101,", "5:30", "out-of-range"},
        {"practised: 1, ", "", "5:7", "missing-key"},
        {"laboratory: 1}", "laboratory: 1, nobody: 1}", "5:48", "unknown-key"},
        {"slip: {anyone: 1, practised: 1, laboratory: 1}", "slip: 1", "5:7", "wrong-type"},
    };
    const std::string good = read_file(folder() / "book/judging.yaml");
    for (const Row& row : rows) {
        std::string judging = good;
        const std::size_t at = judging.find(row.from);
        ASSERT_NE(at, std::string::npos) << row.from;
        write_file("book/judging.yaml", judging.replace(at, row.from.size(), row.to));
        const ProcessResult result = run_small({"judge", "tote.yaml"});
        EXPECT_EQ(result.status, 2) << row.to;
        EXPECT_EQ(result.out, "") << row.to;
        EXPECT_EQ(result.err.rfind("grainside: book/judging.yaml:" + row.place + ": error: ", 0), 0U) << result.err;
        EXPECT_NE(result.err.find(" [" + row.code + "]\n"), std::string::npos) << result.err;
    }
}

TEST_F(DossierFaults, OfARuleFolderThatIsNone) {
    write_file("tote.yaml", kClearDossier);
    for (const std::string& command : kCommands) {
        const ProcessResult result = run({command, "tote.yaml", "--rules", "tote.yaml"});
        EXPECT_EQ(result.status, 2);
        EXPECT_EQ(result.out, "");
        EXPECT_EQ(result.err.rfind("grainside: tote.yaml: error: the rule folder is not a folder", 0), 0U)
            << result.err;
    }
}

}  // namespace
}  // namespace grainside::tests
