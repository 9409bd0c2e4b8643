// grainside report: forms, files, and what hostile text comes to in them (read by parsers that are not ours).
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <filesystem>
#include <string>
#include <thread>
#include <vector>

#include "cli_test.h"
#include "schema_validation.h"
#include "small_dossiers.h"

namespace grainside::tests {
namespace {

namespace fs = std::filesystem;

class ReportCommand : public CliTest {
protected:
    void SetUp() override {
        CliTest::SetUp();
        write_small_evidence("book");
        write_file("clear.yaml", kClearDossier);
        write_file("bare.yaml", kBareDossier);
    }
    ProcessResult report(std::vector<std::string> arguments) const {
        arguments.insert(arguments.begin(), {"report", "--rules", "book"});
        return run(std::move(arguments));
    }
    std::string file(const std::string& name) const { return read_file(folder() / name); }
};

TEST_F(ReportCommand, WritesAPageByDefault) {
    const ProcessResult result = report({"clear.yaml"});
    EXPECT_EQ(result.status, 0) << result.err;
    EXPECT_TRUE(result.out.starts_with("<!DOCTYPE html>\n<html lang=\"en\">")) << result.out.substr(0, 80);
    EXPECT_TRUE(result.out.ends_with("</html>\n") || result.out.ends_with("</html>"));
    EXPECT_EQ(result.err, "");
}

TEST_F(ReportCommand, TakesTheFormFromTheNameOfTheFile) {
    const std::pair<std::string, std::string> kForms[] = {{"a.html", "<!DOCTYPE html>"},
                                                          {"a.md", "# "},
                                                          {"a.json", "{\"schema\":1,"},
                                                          {"a.csv", "dossier,sample,"},
                                                          {"a", "<!DOCTYPE html>"}};
    for (const auto& [name, begin] : kForms) {
        EXPECT_EQ(report({"--out", name, "clear.yaml"}).status, 0);
        EXPECT_TRUE(file(name).starts_with(begin)) << name << ": " << file(name).substr(0, 60);
    }
    EXPECT_EQ(report({"--format", "csv", "--out", "b.html", "clear.yaml"}).status, 0);
    EXPECT_TRUE(file("b.html").starts_with("dossier,sample,"));
}

TEST_F(ReportCommand, WritesOneFileADossierIntoAFolder) {
    EXPECT_EQ(report({"--into", "out/autumn", "--format", "markdown", "clear.yaml", "bare.yaml"}).status, 0);
    EXPECT_TRUE(fs::exists(folder() / "out/autumn/clear.md"));
    EXPECT_TRUE(fs::exists(folder() / "out/autumn/bare.md"));
    EXPECT_EQ(report({"--into", "one", "clear.yaml"}).status, 0);
    // The same as alone, to the byte.
    EXPECT_EQ(report({"clear.yaml"}).out, file("one/clear.html"));
}

TEST_F(ReportCommand, PutsSeveralDossiersOnOnePage) {
    EXPECT_EQ(report({"--out", "set.html", "clear.yaml", "bare.yaml"}).status, 0);
    EXPECT_EQ(count_of(file("set.html"), "<!DOCTYPE html>"), 1U);
    EXPECT_EQ(count_of(file("set.html"), "<h1>"), 1U);
    EXPECT_NE(file("set.html").find("href=\"#dossier-2\""), std::string::npos);
}

TEST_F(ReportCommand, NeverWritesOverADossier) {
    fs::create_symlink("clear.yaml", folder() / "link.html");
    for (const std::string name : {"clear.yaml", "./clear.yaml", "link.html"}) {
        const ProcessResult result = report({"--out", name, "clear.yaml"});
        EXPECT_EQ(result.status, 2);
        EXPECT_NE(result.err.find("would be lost"), std::string::npos) << result.err;
        EXPECT_EQ(file("clear.yaml"), kClearDossier);
    }
}

// The listing as it was captured, and the pictures, are the evidence.
TEST_F(ReportCommand, NeverWritesOverWhatADossierNames) {
    write_file("tote.md", "# Tote\n\nA cotton tote.\n");
    write_file("pics/cut.csv", "a picture");
    write_file(
        "tote.yaml",
        "sample: {what: tote}\nlisting: {file: tote.md}\nparts: {body: {readings: [{method: flame, outcome: melts, "
        "photo: pics/cut.csv}]}}\n");
    const std::vector<std::vector<std::string>> kCalls = {{"--out", "tote.md"},
                                                          {"--out", "./pics/../tote.md"},
                                                          {"--out", "pics/cut.csv"},
                                                          {"--into", ".", "--format", "markdown"}};
    for (std::vector<std::string> call : kCalls) {
        call.emplace_back("tote.yaml");
        const ProcessResult result = report(call);
        EXPECT_EQ(result.status, 2) << call[1];
        EXPECT_NE(result.err.find("would be lost"), std::string::npos) << result.err;
        EXPECT_EQ(file("tote.md"), "# Tote\n\nA cotton tote.\n");
        EXPECT_EQ(file("pics/cut.csv"), "a picture");
    }
}

TEST_F(ReportCommand, WritesTheGoodOnesWhereOneIsBroken) {
    write_file("broken.yaml", kBrokenDossier);
    EXPECT_EQ(report({"--into", "out", "broken.yaml", "clear.yaml"}).status, 2);
    EXPECT_TRUE(fs::exists(folder() / "out/clear.html"));
    EXPECT_FALSE(fs::exists(folder() / "out/broken.html"));
}

TEST_F(ReportCommand, NamesAFileForStandardInput) {
    EXPECT_EQ(run_with_input({"report", "--rules", "book", "--into", "out", "-"}, kClearDossier).status, 0);
    EXPECT_TRUE(fs::exists(folder() / "out/stdin.html"));
}

TEST_F(ReportCommand, SaysWhatCannotBeDone) {
    write_file("sub/clear.yaml", kClearDossier);
    write_file("broken.yaml", kBrokenDossier);
    const ProcessResult twice = report({"--into", "out", "clear.yaml", "sub/clear.yaml"});
    EXPECT_EQ(twice.status, 2);
    EXPECT_NE(twice.err.find("two dossiers are called 'clear'"), std::string::npos) << twice.err;
    EXPECT_FALSE(fs::exists(folder() / "out/clear.html"));
    const ProcessResult nowhere = report({"--out", "missing/a.html", "clear.yaml"});
    EXPECT_EQ(nowhere.status, 2);
    EXPECT_NE(nowhere.err.find("'missing/a.html' cannot be written"), std::string::npos) << nowhere.err;
    EXPECT_EQ(report({"--out", "a.html", "--into", "b", "clear.yaml"}).status, 2);
    EXPECT_EQ(report({"--format", "pdf", "clear.yaml"}).status, 2);
    EXPECT_EQ(report({}).status, 2);
    // The good one is reported all the same, and the status tells of the other.
    const ProcessResult part = report({"--out", "part.html", "broken.yaml", "clear.yaml"});
    EXPECT_EQ(part.status, 2);
    EXPECT_NE(part.err.find("broken.yaml:4:"), std::string::npos) << part.err;
    EXPECT_NE(file("part.html").find("</html>"), std::string::npos);
}

TEST_F(ReportCommand, SaysTheSameOnEveryRun) {
    for (const std::string form : {"html", "markdown", "json", "csv"}) {
        EXPECT_EQ(report({"--format", form, "clear.yaml", "bare.yaml"}).out,
                  report({"--format", form, "clear.yaml", "bare.yaml"}).out);
    }
}

TEST_F(ReportCommand, NamesWhatMakesItReproducible) {
    const std::string text = report({"--format", "markdown", "--on", "2026-10-01", "clear.yaml"}).out;
    for (const char* words :
         {"Rules and limits of: 2026-10-01", "Decision rule for limits: both-guarded", "Dossier, SHA-256: ",
          "Listing's fields, SHA-256: ", "Rule book: ", "not legal advice; local law and licensed practice decide"}) {
        EXPECT_NE(text.find(words), std::string::npos) << words << "\n" << text;
    }
}

TEST_F(ReportCommand, FollowsItsSchema) {
    std::vector<std::string> arguments = {"report", "--format", "json"};
    for (const auto& entry : fs::directory_iterator(GRAINSIDE_DOSSIERS)) {
        if (entry.path().extension() == ".yaml") arguments.push_back(entry.path().string());
    }
    ASSERT_GT(arguments.size(), 20U);
    const ProcessResult result = run(arguments);
    EXPECT_EQ(result.status, 0) << result.err;
    const ProcessResult valid = validate_records({"report"}, result.out, folder());
    EXPECT_EQ(valid.status, 0) << valid.out << valid.err;
}

// Each needle is text that some reader would obey; all of them stand in the listing, one in every other text.
const std::vector<std::string> kNeedles = {
    "<script>alert(1)</script>",
    "</style><img src=x onerror=alert(2)>",
    "\\\"'><svg onload=alert(3)>",
    "<!-- never closed",
    "]]><![CDATA[",
    "&lt;b&gt;&amp;",
    "[here](javascript:alert(4))",
    "![](http://example.org/pixel)",
    "<http://example.org/auto>",
    "http://example.org/bare and www.example.org/bare",
    "someone@example.org",
    "`code` **bold** _it_ ~~gone~~ | cell | {{name}} $x$",
    "=HYPERLINK(\\\"http://example.org\\\")",
    "@SUM(1+1)",
    "+1|' /C calc'!A0",
    "-2+3",
};

std::string json_list(const std::vector<std::string>& texts) {
    std::string list = "[";
    for (const std::string& text : texts) list += (list.size() > 1 ? ",\"" : "\"") + text + '"';
    return list + ']';
}

// A listing whose lines are the needles, besides characters that are obeyed, broken UTF-8 and a word of a megabyte.
std::string hostile_listing() {
    std::string text = "A cotton bag.\n";
    for (std::string needle : kNeedles) {
        for (std::size_t at = 0; (at = needle.find("\\\"", at)) != std::string::npos;) needle.erase(at, 1);
        text += needle + "\n";
    }
    text +=
        "\x1B[31mred\x1B]0;title\x07 \xC2\x9B"
        "2J \xE2\x80\xAE"
        "elttob \xE2\x81\xA6 \xFF\xC0\xAF\n\n";
    return text;
}

TEST_F(ReportCommand, MakesHostileTextInertInEveryForm) {
    write_file("listing.txt", hostile_listing());
    std::string dossier =
        "sample:\n  what: \"=1+1 <script>alert(0)</script>\\e[1m\\u202E\"\n"
        "  seller: \"@seller [x](javascript:alert(1)) </td>\"\n  price: 64.00 EUR\n"
        "listing: {file: listing.txt}\nparts:\n  body:\n    readings:\n"
        "      - {method: flame, outcome: melts, photo: \"../<img src=x>.jpg\", "
        "note: \"+1 <script>alert(5)</script> \\u2066\"}\n"
        "costs:\n  materials:\n"
        "    - {item: \"=1+1 </svg><script>alert(6)</script>\\u202E\", amount: 1.20 EUR}\n"
        "    - {item: \"| cell | **bold** www.example.org\", amount: 2-3 EUR}\n";
    write_file("hostile.yaml", dossier);
    for (const std::string form : {"html", "markdown", "csv", "json"}) {
        const ProcessResult result = report({"--format", form, "--out", "out." + form, "hostile.yaml"});
        ASSERT_EQ(result.status, 0) << result.err;
        std::vector<std::string> needles = {"=1+1 <script>alert(0)</script>", "@seller [x](javascript:alert(1)) </td>"};
        if (form != "csv") needles.insert(needles.end(), kNeedles.begin(), kNeedles.end());
        if (form == "html" || form == "markdown") needles.push_back("=1+1 </svg><script>alert(6)</script>");
        EXPECT_EQ(faults_in(form, "out." + form, json_list(needles)), "") << form;
    }
}

TEST_F(ReportCommand, KeepsAWordOfAMegabyteFromDrowningTheRest) {
    const std::string word(std::size_t{1} << 20, 'x');
    write_file("listing.txt", "A cotton bag " + word + ". It is lined in cotton.\n");
    write_file("long.yaml", "sample: {what: " + word.substr(0, 5000) + "}\nlisting: {file: listing.txt}\n");
    for (const std::string form : {"html", "markdown", "csv"}) {
        const ProcessResult result = report({"--format", form, "--out", "out." + form, "long.yaml"});
        ASSERT_EQ(result.status, 0) << result.err;
        EXPECT_LT(fs::file_size(folder() / ("out." + form)), 200'000U) << form;
        EXPECT_EQ(faults_in(form, "out." + form, "[\"cotton\"]"), "") << form;
    }
    // JSON holds the listing whole: programs asked for it.
    ASSERT_EQ(report({"--format", "json", "--out", "out.json", "long.yaml"}).status, 0);
    EXPECT_EQ(faults_in("json", "out.json", "[\"" + word.substr(0, 100'000) + "\"]"), "");
}

// The check of the tests above can fail: each of these must be found.
TEST_F(ReportCommand, TheCheckOfInertTextFindsWhatIsNot) {
    const std::pair<std::string, std::string> kBad[] = {{"html", "<p>a</p><script>x</script>"},
                                                        {"html", "<p onclick=\"x\">needle</p>"},
                                                        {"html", "<a href=\"http://example.org\">needle</a>"},
                                                        {"html", "<p>\x1B[1mneedle</p>"},
                                                        {"html", "<p>\xE2\x80\xAEneedle</p>"},
                                                        {"markdown", "[needle](http://example.org)"},
                                                        {"markdown", "needle www.example.org"},
                                                        {"csv", "a,=needle\r\n"},
                                                        {"csv", "a,b\r\nneedle\r\n"},
                                                        {"json", "{\"a\":\"b\"}"}};
    for (const auto& [form, text] : kBad) {
        write_file("bad", text);
        EXPECT_NE(faults_in(form, "bad", "[\"needle\"]"), "") << text;
    }
    write_file("good", "<p>needle</p>");
    EXPECT_EQ(faults_in("html", "good", "[\"needle\"]"), "");
}

// Killed at any moment, the tool leaves the old file or the new one.
TEST_F(ReportCommand, LeavesTheOldFileOrTheNewOneWhenKilled) {
    const std::string old = "the old report\n";
    ASSERT_EQ(report({"--out", "whole.html", "clear.yaml", "bare.yaml"}).status, 0);
    const std::string whole = file("whole.html");
    const std::string path = (folder() / "out.html").string();
    std::size_t replaced = 0;
    std::size_t kept = 0;
    for (int round = 0; round < 60; ++round) {
        write_file("out.html", old);
        const pid_t child = ::fork();
        ASSERT_GE(child, 0);
        if (child == 0) {
            if (::chdir(folder().c_str()) != 0) ::_exit(3);
            ::execl(GRAINSIDE_TOOL, "grainside", "report", "--rules", "book", "--out", "out.html", "clear.yaml",
                    "bare.yaml", static_cast<char*>(nullptr));
            ::_exit(4);
        }
        std::this_thread::sleep_for(std::chrono::microseconds(700 * (round % 40)));
        ::kill(child, SIGKILL);
        int status = 0;
        ASSERT_EQ(::waitpid(child, &status, 0), child);
        const std::string found = read_file(path);
        ASSERT_TRUE(found == old || found == whole) << found.size() << " bytes in round " << round;
        ++(found == old ? kept : replaced);
    }
    EXPECT_GT(kept, 0U);
    RecordProperty("replaced", std::to_string(replaced));
}

}  // namespace
}  // namespace grainside::tests
