// grainside judge, identify, plan and learn: what they say of dossiers, and what their options change.
#include <re2/re2.h>

#include <string>
#include <string_view>
#include <vector>

#include "cli_test.h"
#include "small_dossiers.h"

namespace grainside::tests {
namespace {

class DossierCommands : public CliTest {
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

// The number of the member `key` in the first record that has it; -1 where none has.
double number_in(const std::string& records, const std::string& key) {
    double number = -1;
    RE2::PartialMatch(records, '"' + key + "\":(-?[0-9.e-]+)", &number);
    return number;
}

// The closing line; "" where nothing was written.
std::string last_line_of(const std::string& records) {
    const std::vector<std::string> lines = lines_of(records);
    return lines.empty() ? std::string() : lines.back();
}

// The grades of the verdicts on `words`, in their order.
std::vector<std::string> grades_of(const std::string& records, const std::string& words) {
    std::vector<std::string> grades;
    const RE2 form("\"grade\":\"([a-z]+)\"");
    for (const std::string& line : lines_of(records)) {
        if (line.find("\"words\":\"" + words + '"') == std::string::npos) continue;
        std::string grade;
        EXPECT_TRUE(RE2::PartialMatch(line, form, &grade)) << line;
        grades.push_back(grade);
    }
    return grades;
}

using Grades = std::vector<std::string>;

struct ShapeRow {
    std::string_view name;
    const char* dossier;
    int judged;              // exit status of judge
    std::string_view worst;  // as the closing line has it
    std::string_view parts;  // of identify: lines of beliefs, parts in the closing line
    std::string_view questions;
};

const ShapeRow kShapes[] = {
    {"clear", kClearDossier, 1, "\"unasked\":[],\"worst\":\"contradicted\"", "1 1", "\"tests\":0,\"questions\":0,"},
    // Words that mean nothing do so whatever a test shows: nothing is asked about them.
    {"thin", kThinDossier, 0, "\"worst\":\"vague\"", "1 1", "\"tests\":0,\"questions\":0,"},
    {"no_listing", kNoListingDossier, 0, "\"claims\":0,\"verdicts\":0,\"unasked\":[],\"worst\":null", "1 1",
     "\"questions\":1,"},
    {"bare", kBareDossier, 0, "\"claims\":0,\"verdicts\":0,\"unasked\":[],\"worst\":null", "0 0",
     "\"tests\":0,\"questions\":0,"},
    {"borne_out", kBorneOutDossier, 0,
     R"("unasked":[{"part":"lining","reading":1,"method":"look","outcome":"film","date":"2024-08-20"}],)"
     R"("worst":"consistent")",
     "2 2", "\"tests\":0,\"questions\":0,"},
    {"own_priors", kOwnPriorsDossier, 0, "\"worst\":\"vague\"", "1 1", "\"tests\":0,\"questions\":0,"},
    {"near", kNearDossier, 0, "\"worst\":\"inconclusive\"", "0 1", "\"questions\":1,"},
    {"contradictory", kContradictoryDossier, 0, "\"worst\":\"vague\"", "1 1", "\"tests\":0,\"questions\":0,"},
};

TEST_F(DossierCommands, ReadEveryShape) {
    for (const ShapeRow& row : kShapes) {
        const std::string file = std::string(row.name) + ".yaml";
        write_file(file, row.dossier);
        const ProcessResult judged = run_small({"judge", file, "--format", "jsonl"});
        EXPECT_EQ(judged.status, row.judged) << row.name;
        EXPECT_EQ(judged.err, "") << row.name;
        EXPECT_NE(last_line_of(judged.out).find(row.worst), std::string::npos) << row.name << '\n' << judged.out;

        const ProcessResult identified = run_small({"identify", file, "--format", "jsonl"});
        EXPECT_EQ(identified.status, 0) << row.name;
        EXPECT_EQ(identified.err, "") << row.name;
        const std::string parts = std::to_string(lines_of(identified.out).size() - 1) + ' ' +
                                  std::to_string(static_cast<int>(number_in(identified.out, "parts")));
        EXPECT_EQ(parts, row.parts) << row.name << '\n' << identified.out;

        const ProcessResult planned = run_small({"plan", file, "--format", "jsonl"});
        EXPECT_EQ(planned.status, 0) << row.name;
        EXPECT_EQ(planned.err, "") << row.name;
        EXPECT_NE(last_line_of(planned.out).find(row.questions), std::string::npos) << row.name << '\n' << planned.out;
        EXPECT_EQ(lines_of(planned.out).size() - 1, static_cast<std::size_t>(number_in(planned.out, "tests")))
            << row.name;
    }
}

TEST_F(DossierCommands, SayWhatABareDossierLacks) {
    write_file("bare.yaml", kBareDossier);
    EXPECT_NE(run_small({"judge", "bare.yaml"}).out.find("No listing on record: nothing was claimed."),
              std::string::npos);
    EXPECT_NE(run_small({"identify", "bare.yaml"}).out.find("No readings on record."), std::string::npos);
    EXPECT_NE(run_small({"learn", "bare.yaml"}).out.find("there is nothing to learn from."), std::string::npos);
}

TEST_F(DossierCommands, ReadAListingBesideTheDossier) {
    write_file("sent/words.txt", "Cotton tote");
    write_file("sent/tote.yaml",
               "sample: {what: Tote}\n"
               "listing: {file: words.txt}\n"
               "parts: {body: {readings: [{method: flame, outcome: melts}]}}\n");
    const ProcessResult result = run_small({"judge", "sent/tote.yaml", "--format", "jsonl"});
    EXPECT_EQ(result.err, "");
    EXPECT_EQ(grades_of(result.out, "Cotton"), Grades{"contradicted"}) << result.out;
}

// "<stdin>" in the place of the file's name, and a listing's file beside the folder that the tool was called in.
TEST_F(DossierCommands, ReadStandardInput) {
    write_file("tote.yaml", kConfirmedDossier);
    for (const std::string command : {"judge", "identify", "plan", "learn"}) {
        for (const std::string format : {"human", "jsonl"}) {
            const ProcessResult named = run_small({command, "--format", format, "tote.yaml"});
            const ProcessResult read =
                run_with_input({command, "--format", format, "-", "--rules", "book"}, kConfirmedDossier);
            EXPECT_EQ(read.status, named.status) << command;
            EXPECT_EQ(read.err, "") << command;
            std::string wanted = named.out;
            RE2::GlobalReplace(&wanted, format == "human" ? "^tote\n" : "\"(dossier|listing)\":\"tote\"",
                               format == "human" ? "<stdin>\n" : "\"\\1\":\"<stdin>\"");
            EXPECT_EQ(read.out, wanted) << command;
        }
    }
    write_file("words.txt", "Cotton tote");
    const ProcessResult beside = run_with_input({"judge", "--format", "jsonl", "-", "--rules", "book"},
                                                "sample: {what: Tote}\nlisting: {file: words.txt}\n");
    EXPECT_EQ(beside.err, "");
    EXPECT_EQ(grades_of(beside.out, "Cotton"), Grades{"vague"}) << beside.out;
}

// By hand, without the slip of 1 %: cotton 2 * 0.2, silk 1 * 0.2, polyurethane 1 * 0.8, so 0.8 of 1.4 = 0.571.
TEST_F(DossierCommands, IdentifyByBayes) {
    write_file("scarf.yaml", kNoListingDossier);
    const ProcessResult result = run_small({"identify", "scarf.yaml", "--format", "jsonl"});
    const std::string first = R"("candidates":[{"candidate":"polyurethane","prior":0.25,"probability":)";
    ASSERT_NE(result.out.find(first), std::string::npos) << result.out;
    EXPECT_NEAR(number_in(result.out, "probability"), 0.571, 0.01);
}

// The others share what is left of 60 % as in the book, two to one. Then, without the slip of 1 %: cotton 0.267 * 0.8,
// silk 0.133 * 0.8, polyurethane 0.6 * 0.2: 0.213 of 0.44.
TEST_F(DossierCommands, IdentifyByTheDossiersOwnPriors) {
    write_file("pouch.yaml", kOwnPriorsDossier);
    const ProcessResult result = run_small({"identify", "pouch.yaml", "--format", "jsonl"});
    const std::string first = R"("candidates":[{"candidate":"cotton","prior":0.26667,"probability":)";
    ASSERT_NE(result.out.find(first), std::string::npos) << result.out;
    EXPECT_NEAR(number_in(result.out, "probability"), 0.485, 0.01);
    EXPECT_EQ(count_of(result.out, "\"own_priors\":true"), 1U) << result.out;
    const ProcessResult human = run_small({"identify", "pouch.yaml"});
    EXPECT_NE(human.out.find("what the sheet is (what was believed before is the dossier's own)\n"), std::string::npos)
        << human.out;
    write_file("scarf.yaml", kThinDossier);
    EXPECT_EQ(run_small({"identify", "scarf.yaml", "--format", "jsonl"}).out.find("own_priors"), std::string::npos);
}

// A reading weighs the mean of what it does to the odds alone and last. Chances with the slip of 1 %, half of it a
// mixed-up sample and half even: of a film 0.20225 and 0.79625, of melting 0.01283 and 0.97313. Odds of cotton before
// any reading 1, with both readings 0.0066754, by the look alone 0.40511, by the flame alone 0.026025: last 17.83
// and 5.91 decibans, alone 15.85 and 3.92.
TEST_F(DossierCommands, WeighEachReadingAloneAndLast) {
    write_file("tote.yaml", kClearDossier);
    const std::string records = run_small({"judge", "tote.yaml", "--format", "jsonl"}).out;
    const std::string about_cotton = lines_of(records + '\n').front();
    double flame = 0;
    double look = 0;
    EXPECT_TRUE(RE2::PartialMatch(about_cotton, R"("method":"flame",[^}]*"decibans":(-[0-9.]+))", &flame)) << records;
    EXPECT_TRUE(RE2::PartialMatch(about_cotton, R"("method":"look",[^}]*"decibans":(-[0-9.]+))", &look)) << records;
    EXPECT_NEAR(flame, -(17.83 + 15.85) / 2, 0.01);
    EXPECT_NEAR(look, -(5.91 + 3.92) / 2, 0.01);
    EXPECT_NEAR(number_in(about_cotton, "probability"), 0.00663, 1e-5);
    EXPECT_NEAR(number_in(about_cotton, "probability_false"), 0.99337, 1e-5);
    EXPECT_EQ(number_in(about_cotton, "probability_open"), 0);
}

// What a limit offers, and what the readings show, but neither where a rule on words flags it: plastic-named does so in
// the European Union.
TEST_F(DossierCommands, OfferWordsThatPass) {
    write_file("purse.yaml", kNearDossier);
    write_file("tote.yaml", kClearDossier);
    const auto offers = [&](std::vector<std::string> arguments, const std::string& wording) {
        arguments.insert(arguments.begin(), {"judge", "--decide", "simple-acceptance"});
        const std::string human = run_small(arguments).out;
        EXPECT_NE(human.find("\n  contradicted "), std::string::npos) << human;
        arguments.insert(arguments.end(), {"--format", "jsonl"});
        const std::string records = run_small(arguments).out;
        const bool offered = records.find("\"say_instead\":\"" + wording + '"') != std::string::npos;
        EXPECT_EQ(human.find("\n      say instead  " + wording + '\n') != std::string::npos, offered) << human;
        EXPECT_EQ(count_of(records, "\"say_instead\":") > 0, offered) << records;
        return offered;
    };
    EXPECT_TRUE(offers({"purse.yaml"}, "coated silk"));
    EXPECT_TRUE(offers({"tote.yaml"}, "polyurethane"));
    EXPECT_FALSE(offers({"--market", "eu", "tote.yaml"}, "polyurethane"));
}

TEST_F(DossierCommands, NameWhatTheyStandOn) {
    write_file("purse.yaml", kNearDossier);
    const std::string records = run_small({"judge", "purse.yaml", "--format", "jsonl"}).out;
    EXPECT_NE(records.find(R"("sources":["seen-law"],"markets":["eu"],"probability":)"), std::string::npos) << records;
    EXPECT_NE(records.find(R"("next_test":"flame")"), std::string::npos) << records;
    const std::string flame = R"({"method":"flame","title":"A thread in the flame","cautions":["Only in a fume hood.",)"
                              R"("Keep water at hand."],"sources":["unseen-standard"]})";
    const std::string section =
        R"({"method":"section","title":"A section under the microscope","cautions":["Cut away from the hand."],)"
        R"("sources":["seen-law"]})";
    EXPECT_NE(records.find("\"methods\":[" + flame + ',' + section + "],\"rule_book\":"), std::string::npos)
        << "the test that a verdict names, and the one on record: " << records;
    const std::string identity = run_small({"identify", "purse.yaml", "--format", "jsonl"}).out;
    EXPECT_NE(identity.find("\"methods\":[" + section + "],\"rule_book\":"), std::string::npos) << identity;
    write_file("tote.yaml", kClearDossier);
    const std::string unseen = run_small({"judge", "tote.yaml", "--format", "jsonl"}).out;
    EXPECT_NE(unseen.find(R"("sources":["seen-law","unseen-standard"],"markets":[],"from_memory":true,)"),
              std::string::npos)
        << unseen;
    EXPECT_EQ(records.find("from_memory"), std::string::npos) << records;
}

TEST_F(DossierCommands, PlanHarmlessTestsFirst) {
    write_file("tote.yaml",
               "sample: {what: Tote}\nlisting: {name: Polyurethane tote}\nparts: {body: {readings: []}}\n");
    const ProcessResult result = run_small({"plan", "tote.yaml"});
    EXPECT_EQ(result.status, 0);
    const std::size_t harmless = result.out.find("  1. A look with the naked eye\n     body");
    const std::size_t cut = result.out.find(". A thread in the flame\n     body");
    ASSERT_NE(harmless, std::string::npos) << result.out;
    ASSERT_NE(cut, std::string::npos) << result.out;
    EXPECT_EQ(count_of(result.out, "make this one first"), 1U);
    EXPECT_NE(result.out.find("      caution      Only in a fume hood.\n                   Keep water at hand.\n", cut),
              std::string::npos)
        << result.out;
}

// Dirichlet counts: (20 * 0.98 + 1) / 21 by default, (0.98 + 1) / 2 with a weight of 1.
TEST_F(DossierCommands, LearnFromWhatALaboratoryConfirmed) {
    write_file("one.yaml", kConfirmedDossier);
    write_file("two.yaml", kThinDossier);
    const RE2 melts(R"("outcome":"melts","seen":1,"before":0\.98,"after":([0-9.]+))");
    double after = 0;
    const ProcessResult by_default = run_small({"learn", "one.yaml", "two.yaml", "--format", "jsonl"});
    EXPECT_EQ(by_default.status, 0);
    EXPECT_EQ(by_default.err, "");
    ASSERT_TRUE(RE2::PartialMatch(by_default.out, melts, &after)) << by_default.out;
    EXPECT_NEAR(after, 20.6 / 21, 1e-5);
    EXPECT_EQ(number_in(by_default.out, "dossiers"), 1);
    const ProcessResult light = run_small({"learn", "--weight", "1", "one.yaml", "--format", "jsonl"});
    ASSERT_TRUE(RE2::PartialMatch(light.out, melts, &after)) << light.out;
    EXPECT_NEAR(after, 0.99, 1e-5);
    EXPECT_TRUE(RE2::PartialMatch(last_line_of(light.out), R"("rule_book":"[0-9a-f]{16}"}$)")) << light.out;
    const ProcessResult human = run_small({"learn", "one.yaml"});
    EXPECT_NE(human.out.find("\n  flame on polyurethane (1 reading)\n"), std::string::npos) << human.out;
    EXPECT_NE(human.out.find("not legal advice"), std::string::npos);
}

// Three priors of 0.5, 0.25 and 0.25 against the truth of the last: 0.25 + 0.0625 + 0.5625.
TEST_F(DossierCommands, LearnHowWellBeliefsHold) {
    write_file("one.yaml", kConfirmedDossier);
    const ProcessResult result = run_small({"learn", "one.yaml", "--format", "jsonl"});
    const std::string before = R"("before_any_reading":{"cases":1,"brier":0.875,)";
    EXPECT_NE(result.out.find(before), std::string::npos) << result.out;
}

// JCGM 106, clause 8: 0.16 mm, give or take 0.02 mm, against a limit of 0.15 mm lies inside the guard band.
TEST_F(DossierCommands, DecideByTheRuleAskedFor) {
    write_file("purse.yaml", kNearDossier);
    const std::pair<std::string, std::string> rows[] = {
        {"both-guarded", "inconclusive"},
        {"simple-acceptance", "contradicted"},
        {"guarded-acceptance", "contradicted"},
        {"guarded-rejection", "inconclusive"},
    };
    for (const auto& [rule, grade] : rows) {
        const ProcessResult result = run_small({"judge", "--decide", rule, "purse.yaml", "--format", "jsonl"});
        EXPECT_EQ(grades_of(result.out, "Silk"), Grades{grade}) << rule;
        EXPECT_EQ(result.status, grade == "contradicted" ? 1 : 0) << rule;
        EXPECT_NE(result.out.find("\"decision_rule\":\"" + rule + '"'), std::string::npos) << result.out;
        const ProcessResult human = run_small({"judge", "--decide", rule, "purse.yaml"});
        EXPECT_NE(human.out.find("Decision rule for limits: " + rule + ';'), std::string::npos) << human.out;
    }
    EXPECT_EQ(run_small({"judge", "purse.yaml"}).out,
              run_small({"judge", "--decide", "both-guarded", "purse.yaml"}).out);
}

// The limit on the coat holds in the European Union from 2024-01-01.
TEST_F(DossierCommands, ApplyTheLimitsOfTheMarketAndTheDay) {
    write_file("purse.yaml", kNearDossier);
    struct Row {
        std::vector<std::string> options;
        std::string grade;
    };
    const Row rows[] = {
        {{}, "contradicted"},
        {{"--market", "EU,us"}, "contradicted"},
        {{"--market", "us"}, "unsupported"},
        {{"--on", "2024-01-01"}, "contradicted"},
        {{"--on", "2023-12-31"}, "unsupported"},
    };
    for (const Row& row : rows) {
        std::vector<std::string> arguments = {"judge", "purse.yaml", "--format",
                                              "jsonl", "--decide",   "simple-acceptance"};
        arguments.insert(arguments.end(), row.options.begin(), row.options.end());
        const ProcessResult result = run_small(arguments);
        EXPECT_EQ(grades_of(result.out, "Silk"), Grades{row.grade}) << testing::PrintToString(row.options);
        EXPECT_EQ(result.err, "");
    }
    EXPECT_NE(run_small({"plan", "--market", "eu", "purse.yaml"}).out.find("A section under the microscope"),
              std::string::npos);
    EXPECT_EQ(run_small({"plan", "--market", "us", "purse.yaml"}).out.find("A section under the microscope"),
              std::string::npos);
}

// The same limit: the day asked for, else that on which the listing was captured.
TEST_F(DossierCommands, JudgeByTheDayOfTheListing) {
    struct Row {
        std::string captured;
        std::vector<std::string> options;
        std::string grade;
    };
    const Row rows[] = {
        {"2023-12-31", {}, "unsupported"},
        {"2024-01-01", {}, "contradicted"},
        {"2023-12-31", {"--on", "2024-01-01"}, "contradicted"},
        {"2024-01-01", {"--on", "2023-12-31"}, "unsupported"},
    };
    for (const Row& row : rows) {
        write_file("purse.yaml",
                   "sample: {what: Purse}\n"
                   "listing: {name: Silk purse, region: eu, captured: " +
                       row.captured +
                       "}\n"
                       "parts: {body: {readings: [{method: section, coat: 0.30 \xC2\xB1 0.02 mm}]}}\n");
        std::vector<std::string> arguments = {"judge", "purse.yaml", "--format", "jsonl"};
        arguments.insert(arguments.end(), row.options.begin(), row.options.end());
        EXPECT_EQ(grades_of(run_small(arguments).out, "Silk"), Grades{row.grade})
            << row.captured << testing::PrintToString(row.options);
        // Where the limit decides, nothing is open.
        arguments.front() = "plan";
        EXPECT_EQ(number_in(run_small(arguments).out, "questions"), row.grade == "contradicted" ? 0 : 1)
            << row.captured << testing::PrintToString(row.options);
    }
}

// Neither a rule nor a limit that comes into force in a thousand years decides today.
TEST_F(DossierCommands, JudgeByTodayWhereNoDayIsOnRecord) {
    std::string limits = read_file(folder() / "book/limits/small.yaml");
    ASSERT_TRUE(RE2::Replace(&limits, "from: 2024", "from: 3024"));
    write_file("book/limits/small.yaml", limits);
    write_file("purse.yaml",
               "sample: {what: Purse}\n"
               "listing: {name: Silk purse, region: eu}\n"
               "parts: {body: {readings: [{method: section, coat: 0.30 \xC2\xB1 0.02 mm}]}}\n");
    EXPECT_EQ(grades_of(run_small({"judge", "purse.yaml", "--format", "jsonl"}).out, "Silk"), Grades{"unsupported"});
}

TEST_F(DossierCommands, FailAtTheGradeAskedFor) {
    write_file("purse.yaml", kNearDossier);
    write_file("tote.yaml", kClearDossier);
    const std::pair<std::string, int> rows[] = {
        {"contradicted", 0}, {"misleading", 0}, {"unsupported", 0}, {"inconclusive", 1}, {"vague", 1}};
    for (const auto& [grade, status] : rows) {
        EXPECT_EQ(run_small({"judge", "--fail-at", grade, "purse.yaml"}).status, status) << grade;
        EXPECT_EQ(run_small({"judge", "--fail-at", grade, "purse.yaml", "tote.yaml"}).status, 1) << grade;
    }
    EXPECT_EQ(run_small({"judge", "purse.yaml"}).status, 0);
}

TEST_F(DossierCommands, TakeSeveralAtOnce) {
    write_file("one.yaml", kClearDossier);
    write_file("more/two.yaml", kThinDossier);
    const ProcessResult records = run_small({"judge", "one.yaml", "more/two.yaml", "--format", "jsonl"});
    EXPECT_EQ(records.status, 1);
    const std::size_t first = records.out.find("{\"dossier\":\"one\",\"claims\":3,\"verdicts\":3,\"unasked\":");
    const std::size_t second = records.out.find("{\"dossier\":\"two\",\"claims\":1,\"verdicts\":1,\"unasked\":");
    ASSERT_NE(first, std::string::npos) << records.out;
    ASSERT_NE(second, std::string::npos) << records.out;
    EXPECT_LT(first, second);
    for (const std::string command : {"judge", "identify", "plan"}) {
        const ProcessResult human = run_small({command, "one.yaml", "more/two.yaml"});
        EXPECT_EQ(human.out.rfind("one\nTote, tan;", 0), 0U) << human.out;
        EXPECT_NE(human.out.find("\n\ntwo\nPouch\n"), std::string::npos) << human.out;
        EXPECT_EQ(count_of(human.out, "not legal advice"), 1U);
        EXPECT_EQ(count_of(human.out, "\nRule book "), 1U);
        const std::string alone = run_small({command, "more/two.yaml"}).out;
        EXPECT_TRUE(human.out.ends_with(alone)) << "what comes before changes nothing: " << human.out;
    }
}

TEST_F(DossierCommands, GiveTheSameBytesEachTime) {
    write_file("tote.yaml", kConfirmedDossier);
    for (const std::string command : {"judge", "identify", "plan", "learn"}) {
        for (const std::string format : {"human", "jsonl"}) {
            const std::vector<std::string> arguments = {command, "--format", format, "tote.yaml"};
            EXPECT_EQ(run_small(arguments).out, run_small(arguments).out) << command;
        }
    }
}

TEST_F(DossierCommands, JudgeByTheBuiltInBook) {
    write_file("tote.yaml",
               "sample: {what: Tote, category: bag}\n"
               "listing: {name: Full grain leather tote}\n"
               "parts:\n"
               "  body:\n"
               "    readings:\n"
               "      - {method: cut-edge, outcome: yarns-under-coat}\n"
               "      - {method: back-side, outcome: woven-back}\n");
    const ProcessResult result = run({"judge", "tote.yaml"});
    EXPECT_EQ(result.status, 1);
    EXPECT_EQ(result.err, "");
    EXPECT_NE(result.out.find("\nbody\n  contradicted   'Full grain leather' (name)\n"), std::string::npos)
        << result.out;
    EXPECT_NE(result.out.find("fresh blade"), std::string::npos) << "the caution of the method";
    EXPECT_EQ(run({"identify", "tote.yaml"}).status, 0);
    EXPECT_EQ(run({"plan", "tote.yaml"}).status, 0);
}

}  // namespace
}  // namespace grainside::tests
