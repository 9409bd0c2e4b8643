// check and judge with --format sarif: the log against the OASIS schema by a validator that is not ours, and against
// what a schema cannot say (tests/cli/sarif).
#include <re2/re2.h>

#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "cli_test.h"
#include "small_dossiers.h"

namespace grainside::tests {
namespace {

class Sarif : public CliTest {
protected:
    ProcessResult python(std::vector<std::string> arguments) const {
        ProcessCall call;
        call.program = GRAINSIDE_PYTHON;
        call.arguments = std::move(arguments);
        call.folder = folder();
        return run_process(call);
    }

    // Expects that the log is right, and gives "N results, M regions read".
    std::string expect_valid(const std::string& log) const {
        write_file("test.sarif", log);
        const ProcessResult result = python({GRAINSIDE_SARIF_FOLDER "/check_log.py",
                                             GRAINSIDE_SARIF_FOLDER "/sarif-schema-2.1.0.json", ".", "test.sarif"});
        EXPECT_EQ(result.status, 0) << result.out << result.err;
        return result.out;
    }

    static std::vector<std::string> files_in(const std::string& of_folder, std::string_view extension) {
        std::vector<std::string> files;
        for (const auto& entry : std::filesystem::recursive_directory_iterator(of_folder)) {
            if (!entry.is_regular_file()) continue;
            if (extension.empty() || entry.path().extension() == extension) files.push_back(entry.path().string());
        }
        std::sort(files.begin(), files.end());
        return files;
    }

    static std::vector<std::string> all_of(std::string_view log, const std::string& pattern) {
        std::vector<std::string> found;
        re2::StringPiece rest(log.data(), log.size());
        for (std::string one; RE2::FindAndConsume(&rest, pattern, &one);) found.push_back(one);
        return found;
    }
    static std::vector<std::string> fingerprints(const std::string& log) {
        return all_of(log, "\"grainside/v1\":\"([^\"]*)\"");
    }
};

std::vector<std::string> joined(std::vector<std::string> first, const std::vector<std::string>& more) {
    first.insert(first.end(), more.begin(), more.end());
    return first;
}

// Every listing of the labelled corpus: as JSON Lines, as an indented array with escapes, as text with a byte order
// mark, as Markdown with CR LF. The regions are read back from the files.
TEST_F(Sarif, IsValidForTheCorpus) {
    const ProcessResult fed = python({GRAINSIDE_SARIF_FOLDER "/corpus_feed.py", ".", GRAINSIDE_CORPUS});
    ASSERT_EQ(fed.status, 0) << fed.err;
    const ProcessResult result =
        run({"check", "--format", "sarif", "feed.jsonl", "escaped.json", "plain.txt", "heading.md"});
    EXPECT_EQ(result.status, 1);
    EXPECT_EQ(result.err, "");
    const std::string counts = expect_valid(result.out);
    int results = 0;
    int regions = 0;
    ASSERT_TRUE(RE2::FullMatch(counts, "([0-9]+) results, ([0-9]+) regions read\n", &results, &regions)) << counts;
    EXPECT_GT(results, 3000);
    EXPECT_EQ(results, regions);
}

TEST_F(Sarif, IsValidForEveryHostileFile) {
    const std::vector<std::string> files = files_in(GRAINSIDE_CORPUS "/fuzz", "");
    ASSERT_GT(files.size(), 30U);
    for (const char* input : {"auto", "text", "json", "jsonl"}) {
        const ProcessResult result = run(joined({"check", "--format", "sarif", "--input", input}, files));
        EXPECT_EQ(result.status, 2) << input;  // compiled books among them are no text
        expect_valid(result.out);
    }
}

TEST_F(Sarif, IsValidForDossiers) {
    const ProcessResult result =
        run(joined({"judge", "--format", "sarif"}, files_in(GRAINSIDE_CORPUS "/dossiers", ".yaml")));
    EXPECT_EQ(result.status, 1);
    EXPECT_EQ(result.err.find("error"), std::string::npos) << result.err;
    expect_valid(result.out);
    for (const char* member : {"\"ruleId\":\"readings/contradicted\"", "\"ruleId\":\"readings/unsupported\"",
                               "\"ruleId\":\"readings/inconclusive\"", "\"basis\":\"wording\"",
                               "\"basis\":\"evidence\"", "ottermoor_bifold.txt\"", "\"relatedLocations\":"}) {
        EXPECT_NE(result.out.find(member), std::string::npos) << member << " is not tried";
    }
    EXPECT_EQ(result.out.find("\"grade\":\"consistent\""), std::string::npos);
}

TEST_F(Sarif, IsValidWithTheSmallBookAndHostileDossiers) {
    write_small_evidence("book");
    write_file("hostile.yaml", kHostileDossier);
    write_file("near.yaml", kNearDossier);
    write_file("bare.yaml", kBareDossier);
    write_file("broken.yaml", kBrokenDossier);
    // Two readings that say the same in one line.
    write_file("twice.yaml",
               "sample: {what: Tote}\nlisting: {name: Cotton tote}\nparts: {body: {readings: [{method: look, outcome: "
               "film}, {method: look, outcome: film}]}}\n");
    const ProcessResult result = run({"judge", "--format", "sarif", "--rules", "book", "hostile.yaml", "near.yaml",
                                      "bare.yaml", "broken.yaml", "twice.yaml"});
    EXPECT_EQ(result.status, 2);
    expect_valid(result.out);
    EXPECT_EQ(result.out.find('\x1B'), std::string::npos);
    EXPECT_NE(result.out.find("\"uri\":\"twice.yaml\",\"index\":3},\"region\":{\"startLine\":2}"), std::string::npos)
        << result.out;
    EXPECT_NE(result.out.find("\"id\":\"unknown-method\""), std::string::npos);
}

// Levels by grade, as `check` may give them.
TEST_F(Sarif, GivesEachGradeItsLevel) {
    write_file("a.jsonl",
               "{\"sku\": \"a\", \"name\": \"Genuine PU leather tote\", \"description\": "
               "\"Waterproof. Durable, premium leather.\"}\n");
    const ProcessResult result = run({"check", "--format", "sarif", "a.jsonl"});
    expect_valid(result.out);
    std::set<std::string> pairs;
    for (const std::string& line : lines_of(result.out)) {
        std::string level;
        std::string grade;
        if (RE2::PartialMatch(line, "^\\{\"ruleId\".*\"level\":\"([a-z]+)\".*\"grade\":\"([a-z]+)\"", &level, &grade)) {
            pairs.insert(grade + ' ' + level);
        }
    }
    EXPECT_EQ(pairs, (std::set<std::string>{"misleading error", "unsupported warning", "vague note"})) << result.out;
}

TEST_F(Sarif, KeepsFingerprintsWhereTextIsAdded) {
    const std::string record =
        "{\"sku\": \"s\", \"name\": \"Genuine PU leather tote\"}\n{\"name\": \"Vegan leather bag\"}\n";
    write_file("feed.jsonl", record);
    write_file("a.txt", "Vegan leather bag.\nSolid gold-plated buckle.\n");
    const std::string before = run({"check", "--format", "sarif", "feed.jsonl", "a.txt"}).out;
    write_file("feed.jsonl", "{\"sku\": \"t\", \"name\": \"Belt\"}\n{\"name\": \"Purse\"}\n" + record);
    write_file(
        "a.txt",
        "A bag for every day.\n\nIn \xC3\xA9t\xC3\xA9.  VEGAN-LEATHER bag.\nIt has a solid gold-plated buckle.\n");
    const std::string after = run({"check", "--format", "sarif", "./feed.jsonl", "a.txt"}).out;
    EXPECT_EQ(fingerprints(before).size(), 4U);
    EXPECT_EQ(fingerprints(before), fingerprints(after));
    const std::string lines = "\"startLine\":([0-9]+)";
    EXPECT_EQ(all_of(before, lines), (std::vector<std::string>{"1", "2", "1", "2"}));
    EXPECT_EQ(all_of(after, lines), (std::vector<std::string>{"3", "4", "3", "4"}));
    expect_valid(after);
}

TEST_F(Sarif, TellsFindingsApartByWhatTheyAreAbout) {
    write_file("feed.jsonl",
               "{\"sku\": \"1\", \"name\": \"Vegan leather bag\", \"description\": \"Vegan leather. Vegan leather.\"}\n"
               "{\"sku\": \"2\", \"name\": \"Vegan leather bag\"}\n");
    const std::vector<std::string> prints = fingerprints(run({"check", "--format", "sarif", "feed.jsonl"}).out);
    EXPECT_EQ(std::set<std::string>(prints.begin(), prints.end()).size(), prints.size());
    EXPECT_EQ(prints.size(), 4U);
}

TEST_F(Sarif, EscapesPathsAndLeavesStandardInputWithoutOne) {
    write_file("of \xC3\xA9t\xC3\xA9/a:b #1%.txt", "Vegan leather bag.");
    const ProcessCall call = call_of({"check", "--format", "sarif", "of \xC3\xA9t\xC3\xA9/a:b #1%.txt", "-"});
    ProcessCall with_input = call;
    with_input.input = {"Genuine PU leather tote"};
    const ProcessResult result = run_process(with_input);
    EXPECT_NE(result.out.find("{\"uri\":\"of%20%C3%A9t%C3%A9/a%3Ab%20%231%25.txt\",\"index\":0}"), std::string::npos)
        << result.out;
    EXPECT_NE(result.out.find("\"locations\":[{\"logicalLocations\":[{\"name\":\"description\",\"fullyQualifiedName\":"
                              "\"<stdin>:1/description\""),
              std::string::npos);
    EXPECT_EQ(expect_valid(result.out), "2 results, 1 regions read\n");
    const ProcessResult absolute = run({"check", "--format", "sarif", (folder() / "none.txt").string()});
    EXPECT_NE(absolute.out.find("{\"uri\":\"file:///"), std::string::npos);
    expect_valid(absolute.out);
}

TEST_F(Sarif, TellsWhatCannotBeRead) {
    write_file("feed.jsonl", "{\"sku\": \"one\", \"name\": }\n{\"sku\": \"two\", \"name\": \"Vegan leather bag\"}\n");
    const ProcessResult result = run({"check", "--format", "sarif", "feed.jsonl", "missing.txt"});
    EXPECT_EQ(result.status, 2);
    EXPECT_NE(result.out.find("\"executionSuccessful\":false"), std::string::npos);
    EXPECT_NE(result.out.find("\"descriptor\":{\"id\":\"json-syntax\"},\"locations\":[{\"physicalLocation\":{"
                              "\"artifactLocation\":{\"uri\":\"feed.jsonl\"},\"region\":{\"startLine\":1}}}]"),
              std::string::npos)
        << result.out;
    EXPECT_NE(result.out.find("\"uri\":\"missing.txt\""), std::string::npos);
    EXPECT_EQ(count_of(result.out, "\"ruleId\":"), 1U);
    expect_valid(result.out);
}

struct HostileRow {
    std::string_view name;
    std::string text;
};

// Text that a terminal, a browser or a reader of SARIF might obey. Where the words are flagged, their message says
// them.
TEST_F(Sarif, IsInertWhateverTheTextHolds) {
    const HostileRow rows[] = {
        {"script", "Vegan <script>alert(1)</script> leather bag"},
        {"link", "Vegan [x](https://example.test) leather bag"},
        {"placeholder", "Vegan {0} leather bag {1}}"},
        {"backslash", "Vegan \\[ leather\\ bag"},
        {"escape", "Vegan \x1B[31m leather \x1B]0;x\x07 bag \xC2\x9B"},
        {"direction", "Vegan\xE2\x80\xAE leather\xE2\x81\xA6 bag\xE2\x80\xAC"},
        {"broken", "Vegan \xFF\xC3 leather \xED\xA0\x80 bag"},
        {"line_ends", "Vegan\r\nleather\xE2\x80\xA8 bag"},
        {"nul", std::string("Vegan \0 leather bag", 19)},
        {"long_word", "Vegan leather bag " + std::string(std::size_t{1} << 20, 'x')},
        {"long_marks", "Vegan leather" + std::string(std::size_t{1} << 20, '!')},
    };
    for (const HostileRow& row : rows) {
        write_file("a.txt", row.text);
        const ProcessResult result = run({"check", "--format", "sarif", "a.txt"});
        EXPECT_EQ(result.status, 1) << row.name;
        EXPECT_EQ(count_of(result.out, "\"ruleId\":"), 1U) << row.name;
        EXPECT_LT(result.out.size(), 700'000U) << row.name;
        expect_valid(result.out);
    }
}

TEST_F(Sarif, GivesTheSameBytesTwice) {
    const std::vector<std::string> call =
        joined({"judge", "--format", "sarif"}, files_in(GRAINSIDE_CORPUS "/dossiers", ".yaml"));
    EXPECT_EQ(run(call).out, run(call).out);
}

TEST_F(Sarif, WritesNothingWhereItCannotBegin) {
    const ProcessResult book = run({"check", "--format", "sarif", "--rules", "none", "a.txt"});
    EXPECT_EQ(book.status, 2);
    EXPECT_EQ(book.out, "");
    write_file("a.txt", "Vegan leather bag");
    const ProcessResult quiet = run({"check", "--format", "sarif", "--quiet", "a.txt"});
    EXPECT_EQ(quiet.status, 1);
    EXPECT_EQ(quiet.out, "");
}

TEST_F(Sarif, HoldsWithoutAnyResult) {
    write_file("belt.txt", "Belt in full grain leather with a brass buckle.");
    const ProcessResult result =
        run({"check", "--format", "sarif", "--on", "2026-09-27", "--market", "us,eu", "belt.txt"});
    EXPECT_EQ(result.status, 0);
    EXPECT_NE(result.out.find("\"results\":[],\"artifacts\":[{"), std::string::npos);
    EXPECT_NE(result.out.find("\"on\":\"2026-09-27\",\"markets\":[\"us\",\"eu\"],\"note\":\"This is not legal advice"),
              std::string::npos);
    expect_valid(result.out);
    write_file("empty.jsonl", "");
    expect_valid(run({"check", "--format", "sarif", "empty.jsonl"}).out);
}

// A log stays small in memory: results are written while the feed is read. Each further thread holds two more batches.
TEST_F(Sarif, KeepsMemoryBounded) {
    std::string feed;
    for (int i = 0; i < 40'000; ++i) {
        feed += "{\"sku\": \"" + std::to_string(i) + "\", \"name\": \"Vegan leather bag, solid gold-plated buckle\"}\n";
    }
    write_file("feed.jsonl", feed);
    const ProcessResult result = run({"check", "--format", "sarif", "--threads", "1", "feed.jsonl"});
    EXPECT_GT(result.out.size(), std::size_t{50} << 20);
#ifndef GRAINSIDE_UNDER_SANITIZER
    EXPECT_LT(result.peak_kibibytes, 64 << 10);
#endif
}

// The schema and the checker refuse what is wrong: a log is made wrong in one place.
TEST_F(Sarif, CheckerSeesFaults) {
    write_file("a.txt", "Vegan leather bag.");
    const std::string log = run({"check", "--format", "sarif", "a.txt"}).out;
    expect_valid(log);
    const std::pair<std::string_view, std::string_view> rows[] = {
        {"\"level\":\"error\",\"message\":{\"text\":\"'Vegan", "\"level\":\"bad\",\"message\":{\"text\":\"'Vegan"},
        {"\"startColumn\":1,", "\"startColumn\":2,"},
        {"\"endColumn\":14", "\"endColumn\":15"},
        {"\"ruleIndex\":", "\"ruleIndex\":1"},
        {"'Vegan leather' is", "'[Vegan](x) leather' is"},
        {"'Vegan leather' is", "'{0} leather' is"},
        {"\"index\":0", "\"index\":0,\"more\":1"},
        {"\"executionSuccessful\":true", "\"executionSuccessful\":false"},
    };
    for (const auto& [from, to] : rows) {
        std::string wrong = log;
        const std::size_t at = wrong.find(from);
        ASSERT_NE(at, std::string::npos) << from;
        wrong.replace(at, from.size(), to);
        write_file("wrong.sarif", wrong);
        const ProcessResult result = python({GRAINSIDE_SARIF_FOLDER "/check_log.py",
                                             GRAINSIDE_SARIF_FOLDER "/sarif-schema-2.1.0.json", ".", "wrong.sarif"});
        EXPECT_EQ(result.status, 1) << to;
    }
}

}  // namespace
}  // namespace grainside::tests
