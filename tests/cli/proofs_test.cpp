// check, reword, judge and report with --proofs: what a document lifts, what is said of one that does not suffice or
// that covers nothing, and the records. ISO 811 (resistance to water penetration, hydrostatic pressure) is the test
// that the default book asks of a waterproof textile.
#include <string>
#include <string_view>
#include <vector>

#include "cli_test.h"
#include "schema_validation.h"

namespace grainside::tests {
namespace {

const char* const kFeed =
    "{\"sku\": \"tote-1\", \"name\": \"Canvas tote\", \"description\": \"Lining: waterproof polyester.\"}\n"
    "{\"sku\": \"tote-2\", \"name\": \"Canvas tote\", \"description\": \"Lining: waterproof polyester. Vegan leather "
    "handles.\"}\n";

std::string report(std::string_view more, std::string_view name = "Test report 4711") {
    return "- {document: " + std::string(name) +
           ", laboratory: Harbour Test House, date: 2026-03-02, result: \"water column 2,000 mm\", " +
           std::string(more) + "}\n";
}

const std::string kScope = "scope: {part: lining, says: [waterproof]}";
const std::string kOfOne = "scope: {listings: [tote-1], part: lining, says: [waterproof]}";

class Proofs : public CliTest {
protected:
    void SetUp() override {
        CliTest::SetUp();
        write_file("feed.jsonl", kFeed);
    }
    ProcessResult check(const std::string& proofs, std::vector<std::string> more = {}) const {
        write_file("filed.yaml", proofs);
        std::vector<std::string> arguments = {"check", "--proofs", "filed.yaml", "--on", "2026-11-26"};
        arguments.insert(arguments.end(), more.begin(), more.end());
        arguments.emplace_back("feed.jsonl");
        return run(std::move(arguments));
    }
};

TEST_F(Proofs, LiftWhatTheyAnswerAndNothingElse) {
    const ProcessResult result =
        check(report("expires: 2029-03-01, standard: ISO 811, " + kOfOne), {"--format", "jsonl"});
    EXPECT_EQ(result.status, 1);
    EXPECT_EQ(result.err, "");
    const auto lines = lines_of(result.out);
    ASSERT_EQ(lines.size(), 5U) << result.out;
    for (const std::string_view part :
         {R"("listing":"tote-1","field":"description")", R"("words":"waterproof","part":"lining")",
          R"("grade":"consistent","basis":"evidence","rule":"waterproof-unproven")",
          R"("on_file":{"document":"Test report 4711","laboratory":"Harbour Test House","date":"2026-03-02",)"
          R"("expires":"2029-03-01","standard":"ISO 811","result":"water column 2,000 mm"}})"}) {
        EXPECT_NE(lines[0].find(part), std::string::npos) << part << '\n' << lines[0];
    }
    EXPECT_EQ(lines[1], R"({"listing":"tote-1","claims":3,"findings":0,"on_file":1,"worst":null})");
    EXPECT_NE(lines[2].find(R"("grade":"unsupported")"), std::string::npos);
    EXPECT_NE(lines[2].find(R"("would_support":[{)"), std::string::npos);
    EXPECT_EQ(lines[2].find("not_lifted"), std::string::npos);
    EXPECT_NE(lines[3].find(R"("grade":"misleading")"), std::string::npos);
    EXPECT_NE(lines[4].find(R"("findings":2,"on_file":0,"worst":"misleading"})"), std::string::npos);
    EXPECT_EQ(validate_records({"finding", "closing"}, result.out, folder()).status, 0);
}

TEST_F(Proofs, DecideTheExitStatus) {
    struct Row {
        std::string_view name;
        std::string proofs;
        int status;
        std::string_view why;    // of a document that does not suffice
        std::size_t unused = 0;  // warnings
    };
    const Row rows[] = {
        {"both_lifted", report(kScope), 0, ""},
        {"one_lifted", report(kOfOne), 1, ""},
        {"ran_out", report("expires: 2026-11-25, " + kScope), 1, "Test report 4711 ran out on 2026-11-25"},
        {"other_standard", report("standard: EN 343, " + kScope), 1, "Test report 4711 names EN 343; ISO 811"},
        {"covers_nothing", report("scope: {part: strap, says: waterproof}"), 1, "", 1},
        {"empty", "", 1, ""},
    };
    write_file("feed.jsonl",
               "{\"sku\": \"tote-1\", \"name\": \"Waterproof lining\"}\n"
               "{\"sku\": \"tote-2\", \"name\": \"Waterproof lining\"}\n");
    for (const Row& row : rows) {
        const ProcessResult result = check(row.proofs, {"--format", "jsonl", "--fail-at", "unsupported"});
        EXPECT_EQ(result.status, row.status) << row.name << '\n' << result.out << result.err;
        EXPECT_EQ(count_of(result.out, "\"not_lifted\""), row.why.empty() ? 0U : 2U) << row.name << result.out;
        EXPECT_NE(result.out.find(row.why), std::string::npos) << row.name << result.out;
        EXPECT_EQ(count_of(result.err, "[proof-unused]"), row.unused) << row.name << result.err;
        EXPECT_EQ(validate_records({"finding", "closing"}, result.out, folder()).status, 0) << row.name;
    }
}

TEST_F(Proofs, AreToldToPeople) {
    const ProcessResult lifted = check(report("expires: 2029-03-01, " + kOfOne));
    EXPECT_NE(lifted.out.find("tote-1, line 1: nothing found; 3 claims\n"
                              "  proof on file: waterproof (Test report 4711, Harbour Test House, 2026-03-02,\n"
                              "  runs out 2029-03-01)\n"),
              std::string::npos)
        << lifted.out;
    EXPECT_NE(lifted.out.find("      proof        would support it: "), std::string::npos) << lifted.out;
    const ProcessResult expired = check(report("expires: 2026-11-25, " + kScope));
    EXPECT_NE(expired.out.find("      on file      Test report 4711 ran out on 2026-11-25\n"), std::string::npos)
        << expired.out;
    const ProcessResult log = check(report("expires: 2026-11-25, " + kScope), {"--format", "sarif"});
    EXPECT_EQ(count_of(log.out, "On file: Test report 4711 ran out on 2026-11-25."), 2U) << log.out;
    EXPECT_EQ(count_of(log.out, "What would support it: "), 2U);
}

TEST_F(Proofs, ReportEveryFaultAndCheckNothing) {
    const ProcessResult result =
        check("- {document: D, laboratory: L, date: 2026-02-30, scope: {says: watertite}}\n- x\n");
    EXPECT_EQ(result.status, 2);
    EXPECT_EQ(result.out, "");
    EXPECT_NE(result.err.find("filed.yaml:1:38: error: "), std::string::npos) << result.err;
    EXPECT_NE(result.err.find("filed.yaml:1:64: error: there is no concept 'watertite'"), std::string::npos)
        << result.err;
    EXPECT_NE(result.err.find("filed.yaml:2:3: error: "), std::string::npos);
    EXPECT_EQ(run({"check", "--proofs", "missing.yaml", "feed.jsonl"}).status, 2);
}

TEST_F(Proofs, AreHeldAgainstTheirFiles) {
    write_file("reports/4711.pdf", "abc");
    // FIPS 180-4, example B.1.
    const std::string digest = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    const std::string entry = report("file: reports/4711.pdf, digest: " + digest + ", " + kScope);
    const ProcessResult same = check(entry, {"--format", "jsonl"});
    EXPECT_NE(same.out.find(R"("file":"reports/4711.pdf","sha256":")" + digest + "\"}"), std::string::npos) << same.err;
    EXPECT_EQ(validate_records({"finding", "closing"}, same.out, folder()).status, 0);
    write_file("reports/4711.pdf", "abd");
    const ProcessResult changed = check(entry);
    EXPECT_EQ(changed.status, 2);
    EXPECT_NE(changed.err.find("[digest-differs]"), std::string::npos) << changed.err;
}

TEST_F(Proofs, AreTakenUpByReword) {
    write_file("filed.yaml", report(kScope));
    write_file("tote.txt", "Lining: waterproof polyester.\n");
    const ProcessResult bare = run({"reword", "--fail-at", "unsupported", "tote.txt"});
    EXPECT_EQ(bare.status, 1) << bare.out << bare.err;
    const ProcessResult filed = run({"reword", "--proofs", "filed.yaml", "--fail-at", "unsupported", "tote.txt"});
    EXPECT_EQ(filed.status, 0) << filed.out << filed.err;
    EXPECT_EQ(count_of(filed.err, "[proof-unused]"), 0U) << filed.err;
}

const char* const kDossier =
    "sample: {what: Canvas tote}\n"
    "listing: {captured: 2026-01-05, description: \"Lining: waterproof polyester. Body: leather.\"}\n"
    "parts:\n"
    "  body: {readings: [{method: cut-edge, outcome: yarns-alone, date: 2026-02-01}]}\n";

TEST_F(Proofs, OfADossierAndOfTheCallMeetTheirClaims) {
    const std::string own =
        "proofs:\n" + report("standard: ISO 811, " + kScope) + report("scope: {says: rust-proof}", "Letter");
    write_file("tote.yaml", kDossier + own);
    write_file("filed.yaml",
               report("scope: {says: leather}", "Certificate 9") + report("scope: {says: silk}", "Bill 3"));
    const std::vector<std::string> judge = {"judge",      "--proofs", "filed.yaml", "--on",
                                            "2026-11-26", "--format", "jsonl",      "tote.yaml"};
    const ProcessResult result = run(judge);
    EXPECT_EQ(result.status, 1) << result.out << result.err;
    const auto lines = lines_of(result.out);
    const auto line_with = [&](std::string_view words) {
        for (const std::string& line : lines) {
            if (line.find("\"words\":\"" + std::string(words) + '"') != std::string::npos) return line;
        }
        return std::string();
    };
    const std::string waterproof = line_with("waterproof");
    EXPECT_NE(waterproof.find(R"("grade":"consistent","basis":"evidence")"), std::string::npos) << waterproof;
    EXPECT_NE(waterproof.find(R"("on_file":{"document":"Test report 4711")"), std::string::npos) << waterproof;
    const std::string leather = line_with("leather");
    EXPECT_NE(leather.find(R"("grade":"contradicted")"), std::string::npos) << leather;
    EXPECT_NE(leather.find(R"("on_file_overruled":{"document":"Certificate 9")"), std::string::npos) << leather;
    EXPECT_NE(leather.find("A document on file says otherwise"), std::string::npos) << leather;
    EXPECT_EQ(validate_records({"verdict", "judgement_end"}, result.out, folder()).status, 0);
    EXPECT_NE(result.err.find("tote.yaml:7: warning: the proof 'Letter' covered no claim"), std::string::npos)
        << result.err;
    EXPECT_NE(result.err.find("filed.yaml:2: warning: the proof 'Bill 3' covered no claim"), std::string::npos);
    EXPECT_EQ(count_of(result.err, "[proof-unused]"), 2U);
}

TEST_F(Proofs, StandInEveryFormOfTheReport) {
    write_file("tote.yaml", std::string(kDossier) + "proofs:\n" + report("standard: ISO 811, " + kScope));
    for (const char* form : {"html", "markdown", "json", "csv"}) {
        const ProcessResult result = run({"report", "--format", form, "--on", "2026-11-26", "tote.yaml"});
        EXPECT_EQ(result.status, 0) << form << result.err;
        EXPECT_NE(result.out.find("Harbour Test House"), std::string::npos) << form;
        if (std::string_view(form) == "json") {
            EXPECT_EQ(validate_records({"report"}, result.out, folder()).status, 0);
        }
    }
    write_file("bare.yaml", kDossier);
    const ProcessResult bare = run({"report", "--format", "markdown", "--on", "2026-11-26", "bare.yaml"});
    EXPECT_NE(bare.out.find("What would support it"), std::string::npos) << bare.out;
    // A file of proofs is never written over.
    write_file("filed.yaml", report(kScope));
    EXPECT_EQ(run({"report", "--proofs", "filed.yaml", "--out", "filed.yaml", "tote.yaml"}).status, 2);
    EXPECT_EQ(read_file(folder() / "filed.yaml"), report(kScope));
}

TEST_F(Proofs, WithHostileTextsStayInert) {
    write_file(
        "filed.yaml",
        "- {document: \"\\e[31mred\\u202e <b>\", laboratory: \"\\e]0;x\\a\", date: 2026-03-02, expires: 2026-03-03, "
        "result: r, scope: {says: [waterproof, rust-proof]}}\n"
        "- {document: \"\\e[31munused\", laboratory: L, date: 2026-03-02, scope: {says: silk}}\n");
    for (const char* form : {"human", "jsonl", "sarif"}) {
        const ProcessResult result =
            run({"check", "--proofs", "filed.yaml", "--on", "2026-11-26", "--format", form, "feed.jsonl"});
        EXPECT_NE((result.out + result.err).find("red"), std::string::npos) << form;
        EXPECT_EQ((result.out + result.err).find('\x1b'), std::string::npos) << form;
        if (std::string_view(form) != "jsonl") {
            EXPECT_EQ(result.out.find("\xE2\x80\xAE"), std::string::npos) << form;
        }
    }
}

}  // namespace
}  // namespace grainside::tests
