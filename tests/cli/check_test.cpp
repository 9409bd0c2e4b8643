// grainside check: inputs, records that cannot be read, and what options change.
#include <cstddef>
#include <fstream>
#include <string>
#include <string_view>

#include "cli_test.h"

namespace grainside::tests {
namespace {

constexpr std::string_view kPlastic = "Genuine PU leather tote";

using Check = CliTest;

TEST_F(Check, ReadsStandardInput) {
    for (const auto& arguments : {std::vector<std::string>{"check"}, {"check", "-"}}) {
        const ProcessResult result = run_with_input(arguments, std::string(kPlastic));
        EXPECT_EQ(result.status, 1);
        EXPECT_EQ(result.err, "");
        EXPECT_NE(result.out.find("<stdin>:1\n"), std::string::npos) << result.out;
        EXPECT_NE(result.out.find("    Genuine PU leather tote\n    ^^^^^^^^^^^^^^^^^^\n"), std::string::npos);
        EXPECT_NE(result.out.find("1 finding: 1 misleading; 1 claim\n"), std::string::npos);
        EXPECT_NE(result.out.find("not legal advice"), std::string::npos);
    }
}

TEST_F(Check, IsSilentOnAnHonestListing) {
    write_file("belt.txt", "Belt in full grain leather with a brass buckle.");
    const ProcessResult result = run({"check", "belt.txt"});
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(result.err, "");
    EXPECT_EQ(lines_of(result.out).at(0).substr(0, 26), "belt.txt:1: nothing found;");
}

TEST_F(Check, ReadsEveryKindOfFile) {
    write_file("a.txt", kPlastic);
    write_file("b.md", "# Genuine PU leather tote\n\nWith a zip.\n");
    write_file("c.json", R"({"name": "Genuine PU leather tote"})");
    write_file("d.jsonl",
               "{\"sku\": \"D1\", \"name\": \"Genuine PU leather tote\"}\n{\"sku\": \"D2\", \"name\": \"Tote\"}\n");
    write_file("e.data", R"([{"@id": "E1", "name": "Genuine PU leather tote"}])");
    const ProcessResult result = run({"check", "a.txt", "b.md", "c.json", "d.jsonl", "--format", "jsonl"});
    EXPECT_EQ(result.status, 1);
    EXPECT_EQ(result.err, "");
    for (const std::string_view id : {"a.txt:1", "b.md:1", "c.json:1", "D1"}) {
        EXPECT_NE(result.out.find("{\"listing\":\"" + std::string(id) +
                                  "\",\"claims\":1,\"findings\":1,\"worst\":\"misleading\"}\n"),
                  std::string::npos)
            << id << '\n'
            << result.out;
    }
    EXPECT_NE(result.out.find(R"({"listing":"D2","claims":0,"findings":0,"worst":null})"), std::string::npos);
    const ProcessResult named = run({"check", "--input", "json", "e.data", "--format=jsonl"});
    EXPECT_EQ(named.status, 1);
    EXPECT_NE(named.out.find(R"({"listing":"E1")"), std::string::npos) << named.out;
}

TEST_F(Check, DoesTheOthersWhereOneFileCannotBeRead) {
    write_file("a.txt", kPlastic);
    write_file("c.txt", kPlastic);
    std::filesystem::create_directory(folder() / "b.txt");
    const ProcessResult result = run({"check", "--format", "jsonl", "a.txt", "missing.txt", "b.txt", "c.txt"});
    EXPECT_EQ(result.status, 2);
    EXPECT_EQ(count_of(result.out, "\"worst\":\"misleading\"}"), 2U);
    EXPECT_EQ(count_of(result.err, "grainside: "), 2U) << result.err;
    EXPECT_NE(result.err.find("grainside: missing.txt: error: the file cannot be opened"), std::string::npos);
    EXPECT_NE(result.err.find("grainside: error: the folder 'b.txt' has no file"), std::string::npos);
}

TEST_F(Check, NamesThePlaceOfABrokenRecord) {
    write_file("feed.jsonl",
               "{\"sku\": \"one\", \"name\": \"Genuine PU leather tote\"}\n"
               "{\"sku\": \"two\", \"name\": }\n"
               "{\"sku\": \"three\", \"name\": \"Genuine PU leather belt\"}\n");
    const ProcessResult result = run({"check", "--format", "jsonl", "feed.jsonl"});
    EXPECT_EQ(result.status, 2);
    EXPECT_EQ(count_of(result.out, "\"worst\":"), 2U) << result.out;
    EXPECT_NE(result.out.find(R"({"listing":"three","claims":)"), std::string::npos);
    EXPECT_EQ(result.err.rfind("grainside: feed.jsonl:2:24: error: ", 0), 0U) << result.err;
    EXPECT_NE(result.err.find("\n  {\"sku\": \"two\", \"name\": }\n                         ^\n"), std::string::npos)
        << result.err;
}

TEST_F(Check, ReadsOddBytes) {
    write_file("odd.txt", std::string("Genuine PU leather tote \xFF\xC3 and a\0b.", 35));
    const ProcessResult result = run({"check", "--format", "jsonl", "odd.txt"});
    EXPECT_EQ(result.status, 1);
    EXPECT_NE(result.err.find("warning: "), std::string::npos);
    EXPECT_EQ(result.err.find("error: "), std::string::npos) << result.err;
    EXPECT_EQ(count_of(result.out, "\"worst\":\"misleading\"}"), 1U);
}

TEST_F(Check, SaysThatAnEmptyTextIsNone) {
    const ProcessResult text = run_with_input({"check"}, "");
    EXPECT_EQ(text.status, 2);
    EXPECT_EQ(text.out, "");
    EXPECT_EQ(text.err.rfind("grainside: <stdin>:1:1: error: ", 0), 0U) << text.err;
    EXPECT_NE(text.err.find("[no-text]"), std::string::npos);
    write_file("empty.jsonl", "");
    const ProcessResult lines = run({"check", "empty.jsonl"});
    EXPECT_EQ(lines.status, 0);
    EXPECT_EQ(lines.out + lines.err, "");
}

TEST_F(Check, KeepsMemoryBoundedOnALineOf100MB) {
    {
        std::ofstream file(folder() / "big.jsonl", std::ios::binary);
        file << "{\"sku\": \"first\", \"name\": \"Genuine PU leather tote\"}\n{\"name\": \"";
        const std::string block(std::size_t{1} << 20, 'x');
        for (int i = 0; i < 100; ++i) file << block;
        file << "\"}\n{\"sku\": \"last\", \"name\": \"Genuine PU leather tote\"}\n";
        ASSERT_TRUE(file.good());
    }
    const ProcessResult result = run({"check", "--format", "jsonl", "big.jsonl"});
    EXPECT_EQ(result.status, 2);
    EXPECT_EQ(result.err.rfind("grainside: big.jsonl:2:1: error: ", 0), 0U) << result.err;
    EXPECT_NE(result.err.find("[record-too-large]"), std::string::npos);
    EXPECT_NE(result.out.find(R"({"listing":"first")"), std::string::npos);
    EXPECT_NE(result.out.find(R"({"listing":"last")"), std::string::npos);
#ifndef GRAINSIDE_UNDER_SANITIZER
    EXPECT_LT(result.peak_kibibytes, 160 << 10);
#endif
}

TEST_F(Check, ReportsAFieldThatIsTooLong) {
    {
        std::ofstream file(folder() / "long.jsonl", std::ios::binary);
        file << "{\"sku\": \"long\", \"name\": \"Genuine PU leather tote\", \"description\": \"";
        const std::string block(std::size_t{1} << 20, 'x');
        for (int i = 0; i < 17; ++i) file << block;
        file << "\"}\n";
        ASSERT_TRUE(file.good());
    }
    const ProcessResult result = run({"check", "--format", "jsonl", "long.jsonl"});
    EXPECT_EQ(result.status, 2);
    EXPECT_NE(result.err.find("listing 'long' has a field of more than 16 MiB, not read [field-too-long]"),
              std::string::npos)
        << result.err;
    EXPECT_NE(result.out.find(R"("findings":1,"worst":"misleading"})"), std::string::npos);
}

TEST_F(Check, MakesAListingInert) {
    const ProcessResult result = run_with_input(
        {"check"},
        R"({"sku": "\u001b[2Jid\u202e", "name": "\u001b]0;x\u0007Genuine PU leather tote \u202e\u009b31m"})");
    EXPECT_EQ(result.status, 1);
    EXPECT_EQ(result.out.find('\x1B'), std::string::npos);
    EXPECT_EQ(result.out.find('\x07'), std::string::npos);
    EXPECT_EQ(result.out.find("\xE2\x80\xAE"), std::string::npos);
    EXPECT_EQ(result.out.find("\xC2\x9B"), std::string::npos);
    EXPECT_EQ(result.out.rfind("?[2Jid???, line 1\n", 0), 0U) << result.out;
}

TEST_F(Check, SumsUpSeveralListings) {
    write_file(
        "feed.jsonl",
        "{\"name\": \"Genuine PU leather tote\"}\n{\"name\": \"Tote\"}\n{\"name\": \"Genuine PU leather belt\"}\n");
    const ProcessResult result = run({"check", "feed.jsonl"});
    EXPECT_NE(result.out.find("\n3 listings, 2 with findings: 2 misleading; 2 claims\n"), std::string::npos)
        << result.out;
    EXPECT_NE(result.out.find("\nfeed.jsonl:2: nothing found; no claims\n\nfeed.jsonl:3\n"), std::string::npos);
}

TEST_F(Check, GivesTheSameBytesEachTime) {
    write_file("feed.jsonl",
               "{\"name\": \"Genuine PU leather tote\"}\n{\"name\": \"Waterproof eco-friendly bonded leather\"}\n");
    for (const std::string format : {"human", "jsonl"}) {
        EXPECT_EQ(run({"check", "--format", format, "feed.jsonl"}).out,
                  run({"check", "--format", format, "feed.jsonl"}).out);
    }
}

TEST_F(Check, WritesNothingWhereQuiet) {
    const ProcessResult found = run_with_input({"check", "--quiet"}, std::string(kPlastic));
    EXPECT_EQ(found.status, 1);
    EXPECT_EQ(found.out + found.err, "");
    const ProcessResult nothing = run_with_input({"check", "--quiet", "--format", "jsonl"}, "Tote in cotton");
    EXPECT_EQ(nothing.status, 0);
    EXPECT_EQ(nothing.out + nothing.err, "");
}

// What follows runs on the small book, whose rules are known: plastic-named (misleading; us, eu), cotton-named (vague)
// and wool-named-later (unsupported, from 2030-01-01).
class CheckSmallBook : public CliTest {
protected:
    void SetUp() override {
        CliTest::SetUp();
        write_small_book("book");
    }
    ProcessResult check(std::vector<std::string> options, std::string text) const {
        std::vector<std::string> arguments = {"check", "--rules", "book", "--format", "jsonl"};
        arguments.insert(arguments.end(), options.begin(), options.end());
        return run_with_input(arguments, std::move(text));
    }
};

struct StatusRow {
    std::string_view name;
    std::vector<std::string> options;
    std::string_view text;
    int status;
    std::string_view rule;  // that is found; empty: none
};

const StatusRow kStatus[] = {
    {"vague_is_below_misleading", {}, "Cotton", 0, "cotton-named"},
    {"fail_at_vague", {"--fail-at", "vague"}, "Cotton", 1, "cotton-named"},
    {"fail_at_unsupported", {"--fail-at=unsupported"}, "Cotton", 0, "cotton-named"},
    {"fail_at_worse_than_found", {"--fail-at", "contradicted", "--market", "us"}, "Polyurethane", 0, "plastic-named"},
    {"fail_at_better_than_found", {"--fail-at", "unsupported", "--market", "us"}, "Polyurethane", 1, "plastic-named"},
    {"market", {"--market", "us"}, "Polyurethane", 1, "plastic-named"},
    {"market_in_capitals", {"--market", "EU"}, "Polyurethane", 1, "plastic-named"},
    {"markets_in_one", {"--market", "eu,us"}, "Polyurethane", 1, "plastic-named"},
    {"markets_in_two", {"--market", "eu", "--market", "us"}, "Polyurethane", 1, "plastic-named"},
    {"market_leaves_general_rules", {"--market", "us", "--fail-at", "vague"}, "Cotton", 1, "cotton-named"},
    {"before_a_rule", {"--on", "2029-12-31", "--fail-at", "vague"}, "Wool", 0, ""},
    {"first_day_of_a_rule", {"--on", "2030-01-01", "--fail-at", "vague"}, "Wool", 1, "wool-named-later"},
    {"nothing", {"--fail-at", "vague"}, "Wood", 0, ""},
};

TEST_F(CheckSmallBook, GradesAndExits) {
    for (const StatusRow& row : kStatus) {
        const ProcessResult result = check(row.options, std::string(row.text));
        EXPECT_EQ(result.status, row.status) << row.name << '\n' << result.out;
        EXPECT_EQ(result.err, "") << row.name;
        EXPECT_EQ(count_of(result.out, "\"rule\":"), row.rule.empty() ? 0U : 1U) << row.name << '\n' << result.out;
        EXPECT_NE(result.out.find(row.rule), std::string::npos) << row.name << '\n' << result.out;
    }
}

TEST_F(CheckSmallBook, FollowsTheRegionOfAListing) {
    const ProcessResult here = check({}, R"({"name": "Polyurethane", "offers": {"eligibleRegion": "US"}})");
    EXPECT_EQ(here.status, 1);
    EXPECT_NE(here.out.find("plastic-named"), std::string::npos) << here.out;
    const ProcessResult both = check({}, R"({"name": "Polyurethane", "offers": {"eligibleRegion": ["CH", "US"]}})");
    EXPECT_EQ(both.status, 1) << "every region counts: " << both.out;
}

// Told once, however many listings state it, and the same for any number of threads.
TEST_F(CheckSmallBook, TellsRegionsWithoutAMarket) {
    const std::string hint =
        "\n  hint: the book has us, eu; a region is a code of two letters (ISO 3166-1); --market asks for markets "
        "whatever listings state\n";
    std::string lines;
    for (int at = 0; at < 6000; ++at) {
        lines += R"({"name": "Polyurethane bag", "offers": {"eligibleRegion": )";
        lines += at % 3 == 0 ? R"(["CH", "US", "no"]}})" : at % 3 == 1 ? R"("New\u001b Atlantis"}})" : R"("us"}})";
        lines += '\n';
    }
    write_file("c.jsonl", lines);
    const std::string want =
        "grainside: warning: 4000 listings state regions for which the book has no market: 'New? Atlantis' (2000), "
        "'ch' "
        "(2000), 'no' (2000); no rules of a market were asked for these [unknown-region]" +
        hint;
    for (const char* command : {"check", "survey"}) {
        for (const char* threads : {"1", "3"}) {
            EXPECT_EQ(run({command, "--rules", "book", "--threads", threads, "c.jsonl"}).err, want) << command;
        }
        EXPECT_EQ(run({command, "--rules", "book", "--market", "us", "c.jsonl"}).err, "") << command;
    }
    write_file("one.csv", "name,market\nCotton bag,xx\n");
    const ProcessResult one = run({"check", "--rules", "book", "one.csv"});
    EXPECT_EQ(one.status, 0);
    EXPECT_EQ(one.err,
              "grainside: warning: 1 listing states a region for which the book has no market: 'xx' (1); no "
              "rules of a market were asked for these [unknown-region]" +
                  hint);
    EXPECT_EQ(run({"reword", "--diff", "--rules", "book", "one.csv"}).err, one.err);
}

TEST_F(CheckSmallBook, RefusesAnUnknownMarket) {
    const ProcessResult result = check({"--market", "us,atlantis"}, "Polyurethane");
    EXPECT_EQ(result.status, 2);
    EXPECT_EQ(result.out, "");
    EXPECT_EQ(result.err, "grainside: error: --market: there is no market 'atlantis'\n  hint: the book has us, eu\n");
}

TEST_F(CheckSmallBook, TakesTheFileBehindAMarketAsFile) {
    write_file("a.txt", "Polyurethane");
    const ProcessResult result = run({"check", "--rules", "book", "--market", "us", "a.txt", "--format", "jsonl"});
    EXPECT_EQ(result.status, 1);
    EXPECT_NE(result.out.find(R"("listing":"a.txt:1")"), std::string::npos);
}

}  // namespace
}  // namespace grainside::tests
