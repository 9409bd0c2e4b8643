// grainside survey: forms, files, errors, and what hostile names and words come to (read by parsers that are not ours).
#include <filesystem>
#include <string>
#include <vector>

#include "cli_test.h"
#include "schema_validation.h"

namespace grainside::tests {
namespace {

namespace fs = std::filesystem;

class SurveyCommand : public CliTest {
protected:
    ProcessResult survey(std::vector<std::string> arguments) const {
        arguments.insert(arguments.begin(), {"survey", "--on", "2026-11-26"});
        return run(std::move(arguments));
    }
    std::string file(const std::string& name) const { return read_file(folder() / name); }
    std::string demo() const { return std::string(GRAINSIDE_CORPUS) + "/survey/demo.jsonl"; }
};

TEST_F(SurveyCommand, IsNoGate) {
    write_file("bad.txt", "Genuine PU leather tote.\n");
    const ProcessResult result = survey({"bad.txt"});
    EXPECT_EQ(result.status, 0) << result.err;
    EXPECT_TRUE(result.out.starts_with("1 listing, 1 with findings; 1 claim\n")) << result.out;
    EXPECT_NE(result.out.find("not legal advice"), std::string::npos);
    EXPECT_NE(result.out.find("nothing of the products"), std::string::npos) << result.out;
    EXPECT_NE(result.out.find("\nRule book "), std::string::npos);
}

// The ids that the reader makes end with the number of the record.
TEST_F(SurveyCommand, TellsRecordsInTheirOrder) {
    std::string lines;
    for (int at = 0; at < 30; ++at)
        lines += "{\"name\":\"Tote in vegan leather\",\"seller\":\"Shop " + std::to_string(30 - at) + "\"}\n";
    write_file("feed.jsonl", lines);
    for (const char* threads : {"1", "4"}) {
        const std::string out = survey({"--top", "12", "--threads", threads, "feed.jsonl"}).out;
        std::size_t at = out.find("\nWorst listings\n");
        for (int record = 1; record <= 12; ++record) {
            at = out.find(". feed.jsonl:" + std::to_string(record) + " (Shop ", at);
            ASSERT_NE(at, std::string::npos) << record << '\n' << out;
        }
        EXPECT_NE(out.find("as in feed.jsonl:1, name"), std::string::npos) << out;
        EXPECT_LT(out.find("\n  Shop 2 "), out.find("\n  Shop 10 "));
    }
}

TEST_F(SurveyCommand, CountsTheDemoBySeller) {
    const ProcessResult result = survey({demo()});
    EXPECT_EQ(result.status, 0) << result.err;
    EXPECT_TRUE(result.out.starts_with("240 listings of 6 sellers, ")) << result.out.substr(0, 80);
    for (const std::string seller :
         {"Ondemar Workshop", "Velmora Outlet", "Casa Tarviso", "Harrow & Penn", "Marisma Direct", "Lindqvarn Loft"}) {
        EXPECT_NE(result.out.find("\n  " + seller), std::string::npos) << seller;
    }
    for (const std::string& line : lines_of(result.out)) EXPECT_LE(line.size(), 80U) << line;
    EXPECT_EQ(survey({demo()}).out, result.out);
}

TEST_F(SurveyCommand, TakesTheFormFromTheNameOfTheFile) {
    const std::pair<std::string, std::string> kForms[] = {{"a.html", "<!DOCTYPE html>"},
                                                          {"a.json", "{\"schema\":1,"},
                                                          {"a.csv", "kind,group,measure,count,of,rate,low,high\r\n"},
                                                          {"a.txt", "240 listings"}};
    for (const auto& [name, begin] : kForms) {
        EXPECT_EQ(survey({"--out", name, demo()}).status, 0);
        EXPECT_TRUE(file(name).starts_with(begin)) << name << ": " << file(name).substr(0, 60);
    }
    EXPECT_EQ(survey({"--format", "json", "--out", "b.csv", demo()}).status, 0);
    EXPECT_EQ(file("b.csv"), file("a.json"));
    EXPECT_EQ(survey({"--format", "json", demo()}).out, file("a.json"));
}

TEST_F(SurveyCommand, FollowsItsSchema) {
    write_file("none.jsonl", "");
    for (const std::vector<std::string>& call : std::vector<std::vector<std::string>>{
             {demo()},
             {"--market", "us,eu", "--at", "vague", "--confidence", "99", "--within", "2.5", demo()},
             {"--by", "seller", "--top", "0", demo()},
             {"none.jsonl"}}) {
        std::vector<std::string> arguments = call;
        arguments.insert(arguments.begin(), {"--format", "json"});
        const ProcessResult result = survey(arguments);
        EXPECT_EQ(result.status, 0) << result.err;
        const ProcessResult valid = validate_records({"survey"}, result.out, folder());
        EXPECT_EQ(valid.status, 0) << valid.out << valid.err;
    }
}

TEST_F(SurveyCommand, ShowsWhatIsAskedForOnly) {
    const std::string text = survey({"--by", "seller,part", "--top", "0", demo()}).out;
    EXPECT_NE(text.find("\nSellers\n"), std::string::npos);
    EXPECT_NE(text.find("\nParts\n"), std::string::npos);
    for (const std::string title :
         {"\nGrades\n", "\nCategories\n", "\nMarkets\n", "\nRules\n", "\nWorst", "\nCommon"}) {
        EXPECT_EQ(text.find(title), std::string::npos) << title;
    }
    EXPECT_NE(survey({"--top", "3", demo()}).out.find("\n   3. "), std::string::npos);
    EXPECT_EQ(survey({"--top", "3", demo()}).out.find("\n   4. "), std::string::npos);
    EXPECT_NE(survey({"--at", "unsupported", demo()}).out.find("grade unsupported or worse"), std::string::npos);
    EXPECT_NE(survey({"--confidence", "90", demo()}).out.find("90 % limits"), std::string::npos);
}

TEST_F(SurveyCommand, CountsTheGoodRecordsWhereOneIsBroken) {
    write_file("mixed.jsonl", "{\"name\": \"Tote\"}\n{\"name\": \n{\"name\": \"Belt\"}\n");
    const ProcessResult result = survey({"mixed.jsonl"});
    EXPECT_EQ(result.status, 2);
    EXPECT_TRUE(result.out.starts_with("2 listings, ")) << result.out;
    EXPECT_NE(result.err.find("mixed.jsonl:2:"), std::string::npos) << result.err;
}

TEST_F(SurveyCommand, NeverWritesOverAnInput) {
    write_file("shop.jsonl", "{\"name\": \"Tote\"}\n");
    fs::create_symlink("shop.jsonl", folder() / "link.html");
    for (const std::string name : {"shop.jsonl", "./shop.jsonl", "link.html"}) {
        const ProcessResult result = survey({"--out", name, "shop.jsonl"});
        EXPECT_EQ(result.status, 2);
        EXPECT_NE(result.err.find("would be lost"), std::string::npos) << result.err;
        EXPECT_EQ(file("shop.jsonl"), "{\"name\": \"Tote\"}\n");
    }
    EXPECT_EQ(survey({"--out", "missing/a.html", "shop.jsonl"}).status, 2);
}

TEST_F(SurveyCommand, RefusesWrongCalls) {
    for (const std::vector<std::string>& call : std::vector<std::vector<std::string>>{{"--by", "colour"},
                                                                                      {"--at", "consistent"},
                                                                                      {"--confidence", "50"},
                                                                                      {"--within", "0"},
                                                                                      {"--within", "nan"},
                                                                                      {"--top", "-1"},
                                                                                      {"--top", "10001"},
                                                                                      {"--format", "jsonl"},
                                                                                      {"--market", "atlantis"},
                                                                                      {"--proofs", "none.yaml"}}) {
        const ProcessResult result = survey(call);
        EXPECT_EQ(result.status, 2) << call[0] << ' ' << call[1];
        EXPECT_EQ(result.out, "");
        EXPECT_NE(result.err, "");
    }
}

// Seller, id, name of a property and flagged words of a stranger.
TEST_F(SurveyCommand, MakesHostileTextInertInEveryForm) {
    write_file("hostile.jsonl",
               "{\"sku\": \"=1+1 <script>alert(1)</script>\\u001b[2J\\u202e\", \"name\": \"Tote\", "
               "\"offers\": {\"seller\": {\"name\": \"@shop </title><img src=x onerror=alert(2)>\\u0007 \\\"'\"}, "
               "\"eligibleRegion\": \"<b -2\"}, "
               "\"additionalProperty\": {\"name\": \"<svg onload=alert(3)>\", \"value\": \"Vegan \\u2066leather\"}}\n"
               "{\"sku\": \"-2+3\", \"name\": \"Waterproof\\u0000 tote, vegan\\nleather\", "
               "\"brand\": \"\\u202e+1|' /C calc'!A0\"}\n");
    const std::string needles = "[\"=1+1 <script>alert(1)</script>\", \"@shop </title><img src=x onerror=alert(2)>\"";
    for (const std::string form : {"html", "csv", "json"}) {
        const ProcessResult result = survey({"--format", form, "--out", "out." + form, "hostile.jsonl"});
        ASSERT_EQ(result.status, 0) << result.err;
        const std::string more = form == "csv" ? "]" : ", \"additionalProperty.<svg onload=alert(3)>\"]";
        EXPECT_EQ(faults_in(form, "out." + form, needles + more), "") << form;
    }
    const std::string text = survey({"hostile.jsonl"}).out;
    EXPECT_NE(text.find("@shop </title>"), std::string::npos) << text;
    for (const char obeyed : {'\x1B', '\x07', '\0', '\r'}) EXPECT_EQ(text.find(obeyed), std::string::npos);
    EXPECT_EQ(text.find("\xE2\x80\xAE"), std::string::npos);
}

}  // namespace
}  // namespace grainside::tests
