// Which files a call reads, and what of tables and packed files reaches its output.
#include <cstdlib>
#include <filesystem>
#include <string>
#include <utility>
#include <vector>

#include "cli_test.h"

namespace grainside::tests {
namespace {

namespace files = std::filesystem;

class ListingInputs : public CliTest {
protected:
    // The ids of what was read, in its order.
    std::string ids(std::vector<std::string> arguments) const {
        arguments.insert(arguments.begin(), {"check", "--format", "jsonl"});
        const ProcessResult result = run(std::move(arguments));
        std::string out;
        for (const std::string& line : lines_of(result.out)) {
            const std::string key = "{\"listing\":\"";
            if (line.starts_with(key) && line.find("\"worst\"") != std::string::npos) {
                out += line.substr(key.size(), line.find('"', key.size()) - key.size()) + " ";
            }
        }
        return out + std::to_string(result.status) + (result.err.empty() ? "" : " " + result.err);
    }
};

TEST_F(ListingInputs, FolderIsItsListingsSortedByBytes) {
    write_file("f/b.csv", "sku,name\nb,Tote\n");
    write_file("f/B.JSONL", "{\"sku\":\"B\",\"name\":\"Tote\"}\n");
    write_file("f/a/z.txt", "Tote.");
    write_file("f/a/readme.pdf", "no listing");
    write_file("f/.hidden.txt", "no listing");
    write_file("f/.h/x.txt", "no listing");
    files::create_directory_symlink("..", folder() / "f" / "a" / "loop");
    const std::string left_out =
        " grainside: f: note: 1 file of this folder left out, whose endings do not say that they hold listings: 1 "
        ".pdf\n"
        "  hint: name a file to have it read all the same\n";
    EXPECT_EQ(ids({"f"}), "B f/a/z.txt:1 b 0" + left_out);
    // Each file once, at its first place.
    EXPECT_EQ(ids({"f/b.csv", "f", "./f/a/../b.csv"}), "b B f/a/z.txt:1 0" + left_out);
    for (const char* name : {"f/1.png", "f/2.png", "f/a/x", "f/m.e\x1B[2J"}) write_file(name, "no listing");
    const std::string all = ids({"f"});
    EXPECT_NE(all.find(": 2 .png, 1 without an ending, 1 .e?[2J, 1 .pdf\n"), std::string::npos) << all;
}

// In every format, small and larger than a batch (256 KiB), and the rest of the call goes on.
TEST_F(ListingInputs, WhatIsNoTextIsAnErrorAndTheRestGoesOn) {
    using namespace std::string_literals;
    const std::string picture = "\x89PNG\r\n\x1A\n\0\0\0\rIHDR"s;
    for (const char* name : {"f/a.txt", "f/b.html", "f/c.csv", "f/d.jsonl", "f/e.json"}) write_file(name, picture);
    write_file("f/g.jsonl", picture + std::string(400000, '\n'));
    write_file("f/z.txt", "Tote.");
    std::string want = "f/z.txt:1 2 ";
    for (const char* name : {"f/a.txt", "f/b.html", "f/c.csv", "f/d.jsonl", "f/e.json", "f/g.jsonl"}) {
        want += "grainside: "s + name + ": error: this is no text and is not read; it seems to be a PNG picture " +
                "[not-text]\n  hint: write what it shows as text\n";
    }
    EXPECT_EQ(ids({"f"}), want);
    EXPECT_EQ(ids({"--threads", "4", "f"}), want);
    EXPECT_EQ(run({"survey", "f"}).status, 2);
    EXPECT_EQ(run({"reword", "--diff", "f/a.txt"}).status, 2);
    EXPECT_EQ(run_with_input({"check"}, picture).status, 2);
}

TEST_F(ListingInputs, ListInAnObjectWithAnyNumberOfThreads) {
    std::string feed = "{\"total\": 9000,\n\"products\": [";
    for (int at = 0; at < 9000; ++at) {
        feed += std::string(at == 0 ? "\n" : ",\n") + "{\"name\": \"Vegan leather tote, lined in cotton\"}";
    }
    write_file("feed.json", feed + "\n], \"next\": null}");
    const ProcessResult one = run({"check", "--format", "jsonl", "--threads", "1", "feed.json"});
    EXPECT_EQ(one.err, "");
    EXPECT_EQ(count_of(one.out, "\"worst\""), 9000U);
    EXPECT_NE(one.out.find("{\"listing\":\"feed.json:9000\","), std::string::npos);
    EXPECT_EQ(run({"check", "--format", "jsonl", "--threads", "5", "feed.json"}).out, one.out);
    EXPECT_EQ(run({"check", "feed.json"}).out.substr(0, 20), "feed.json:1, line 3\n");
}

TEST_F(ListingInputs, PatternsAreExpanded) {
    write_file("x1.txt", "Tote.");
    write_file("x2.txt", "Tote.");
    write_file("d[1]/e/x3.txt", "Tote.");
    write_file("[x].txt", "Tote.");
    EXPECT_EQ(ids({"x?.txt"}), "x1.txt:1 x2.txt:1 0");
    EXPECT_EQ(ids({"**/x*.txt"}), "d[1]/e/x3.txt:1 x1.txt:1 x2.txt:1 0");
    // A file of that very name is meant first.
    EXPECT_EQ(ids({"[x].txt"}), "[x].txt:1 0");
    EXPECT_EQ(ids({"y*", "x1.txt"}),
              "x1.txt:1 2 grainside: error: nothing matches 'y*'\n  hint: check the pattern; ** stands for any folders "
              "between two slashes\n");
}

TEST_F(ListingInputs, FolderWithoutListingsAndHostileNames) {
    files::create_directory(folder() / "e\x1B[31m");
    const ProcessResult result = run({"check", "e\x1B[31m"});
    EXPECT_EQ(result.status, 2);
    EXPECT_NE(result.err.find("the folder 'e?[31m' has no file"), std::string::npos) << result.err;
    EXPECT_EQ(result.err.find('\x1B'), std::string::npos);
}

TEST_F(ListingInputs, ListOfFiles) {
    write_file("x1.txt", "Tote.");
    write_file("list", "x1.txt\r\n\nx1.txt\n");
    EXPECT_EQ(ids({"--files-from", "list"}), "x1.txt:1 0");
    EXPECT_EQ(run_with_input({"check", "--files-from", "-"}, "x1.txt\n").status, 0);
    write_file("empty", "\n");
    EXPECT_EQ(ids({"--files-from", "empty"}),
              "2 grainside: error: 'empty' names no file\n  hint: write one path a line\n");
}

TEST_F(ListingInputs, TheDemoCatalog) {
    const std::string catalog = std::string(GRAINSIDE_CORPUS) + "/demo/catalog.csv";
    const ProcessResult plain = run({"check", "--format", "jsonl", catalog});
    EXPECT_EQ(plain.err, "");
    EXPECT_EQ(plain.status, 1);
    EXPECT_EQ(count_of(plain.out, "\"worst\""), 20U);
    // The columns with German names were read: 'genuine PU leather' stands in Beschreibung.
    EXPECT_NE(plain.out.find("{\"listing\":\"OW-102\","), std::string::npos);
    EXPECT_NE(plain.out.find("genuine PU leather"), std::string::npos);
}

TEST_F(ListingInputs, PackedByTheSystemsPrograms) {
    files::copy_file(std::string(GRAINSIDE_CORPUS) + "/demo/catalog.csv", folder() / "catalog.csv");
    const std::string want = run({"claims", "--format", "jsonl", "catalog.csv"}).out;
    ASSERT_GT(want.size(), 2000U);
    for (const auto& [program, ending] : {std::pair{"gzip", ".gz"}, std::pair{"zstd", ".zst"}}) {
        ASSERT_EQ(
            std::system(
                ("cd '" + folder().string() + "' && " + program + " -q -c catalog.csv > packed.csv" + ending).c_str()),
            0);
        EXPECT_EQ(run({"claims", "--format", "jsonl", std::string("packed.csv") + ending}).out, want) << program;
        // Nothing is written into a packed file, and no line of it can be shown.
        EXPECT_EQ(run({"reword", "--diff", std::string("packed.csv") + ending}).out, "");
        const ProcessResult log = run({"check", "--format", "sarif", std::string("packed.csv") + ending});
        EXPECT_GT(count_of(log.out, "\"physicalLocation\""), 3U);
        EXPECT_EQ(log.out.find("\"startLine\""), std::string::npos);
    }
}

TEST_F(ListingInputs, RewordKeepsTheTable) {
    write_file("t.csv",
               "sku,name,description\n1,Vegan leather tote,\"The \"\"vegan leather\"\" strap, in PU leather\"\n");
    EXPECT_EQ(run({"reword", "--out", "m.csv", "t.csv"}).err, "");
    EXPECT_EQ(read_file(folder() / "m.csv"),
              "sku,name,description\n1,Imitation leather tote,\"The \"\"imitation leather\"\" strap, in imitation "
              "leather (polyurethane)\"\n");
}

TEST_F(ListingInputs, ColumnsAndSeparator) {
    write_file("t.txt", "Was|Futter\nVegan leather tote|cotton\n");
    EXPECT_EQ(ids({"--input", "csv", "--separator", "|", "--columns", "Was=name,Futter=skip", "t.txt"}), "t.txt:1 1");
    write_file("s.csv", "sep=|\nWas|name\n1|Vegan leather tote\n");
    EXPECT_EQ(ids({"--columns", "Was=id", "s.csv"}), "1 1");
    EXPECT_EQ(ids({"--separator", ";", "--columns", "Was|name=name", "s.csv"}), "s.csv:1 1");
    write_file("q.csv", "\"Was, genau\",b\nVegan leather tote,1\n");
    EXPECT_EQ(ids({"--columns", "\"Was, genau\"=name", "q.csv"}), "q.csv:1 1");
}

}  // namespace
}  // namespace grainside::tests
