// grainside reword: the difference applies, the corrected file is the same, inputs stay as they are.
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <chrono>
#include <cstddef>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "cli_test.h"

namespace grainside::tests {
namespace {

namespace fs = std::filesystem;

struct FormatRow {
    std::string_view name;
    std::string_view file;
    std::string_view text;
    std::string_view want;
};
std::ostream& operator<<(std::ostream& out, const FormatRow& row) {
    return out << row.name;
}

class Reword : public CliTest {
protected:
    // patch(1) with what was written; its own words on a failure.
    ProcessResult patched(const std::string& file, const std::string& diff) const {
        write_file("change.diff", diff);
        ProcessCall call;
        call.program = "/bin/sh";
        call.arguments = {"-c", "patch --fuzz=0 '" + file + "' < change.diff"};
        call.folder = folder();
        return run_process(call);
    }
};

class RewordFormats : public Reword, public testing::WithParamInterface<FormatRow> {};

constexpr FormatRow kFormats[] = {
    {"text", "a.txt", "One.\nTwo.\nA vegan leather tote.\nFour.\n", "One.\nTwo.\nAn imitation leather tote.\nFour.\n"},
    {"text_without_line_end", "a.txt", "Tote in PU leather", "Tote in imitation leather (polyurethane)"},
    {"text_crlf", "a.txt", "One.\r\nTote in PU leather.\r\nThree.\r\n",
     "One.\r\nTote in imitation leather (polyurethane).\r\nThree.\r\n"},
    {"text_crlf_without_end", "a.txt", "One.\r\nTote in PU leather",
     "One.\r\nTote in imitation leather (polyurethane)"},
    {"text_behind_mark", "a.txt", "\xEF\xBB\xBFTote in PU leather.\n",
     "\xEF\xBB\xBFTote in imitation leather (polyurethane).\n"},
    {"text_utf8", "a.txt",
     "Caf\xC3\xA9 \xF0\x9F\x91\x9C tote in PU leather, \xE2\x82\xAC"
     "9.\n",
     "Caf\xC3\xA9 \xF0\x9F\x91\x9C tote in imitation leather (polyurethane), \xE2\x82\xAC"
     "9.\n"},
    {"text_invalid_bytes", "a.txt", "\xFF\xFF Tote in PU leather.\n\x80\n",
     "\xFF\xFF Tote in imitation leather (polyurethane).\n\x80\n"},
    {"text_over_lines", "a.txt", "A roomy tote for every day of the week, cut and sewn from vegan\nleather and more.\n",
     "A roomy tote for every day of the week, cut and sewn from imitation\nleather and more.\n"},
    {"markdown", "a.md", "Draft\n\n# Vegan Leather Tote #\n\n- **PU leather** body\n- cotton lining\n",
     "Draft\n\n# Imitation Leather Tote #\n\n- **Imitation leather (polyurethane)** body\n- cotton lining\n"},
    {"json_keeps_escapes", "a.json",
     "{\n  \"name\" : \"A \\u0022Calla\\u0022 tote\\nin PU l\\u0065ather \\u00e9\\/\",\n  \"x\": [1,  2]\n}\n",
     "{\n  \"name\" : \"A \\u0022Calla\\u0022 tote\\nin imitation leather (polyurethane) \\u00e9\\/\",\n  \"x\": [1,  "
     "2]\n}\n"},
    {"json_array_on_one_line", "a.json", R"([{"name":"PU leather tote"},{"name":"x"},{"name":"Vegan leather bag"}])",
     R"([{"name":"Imitation leather (polyurethane) tote"},{"name":"x"},{"name":"Imitation leather bag"}])"},
    {"json_graph", "a.json", R"({"@graph":[{"@type":"Product","name":"PU leather tote"}],"k":"PU leather"})",
     R"({"@graph":[{"@type":"Product","name":"Imitation leather (polyurethane) tote"}],"k":"PU leather"})"},
    {"lines", "a.jsonl",
     "{\"name\":\"PU leather tote\"}\r\n\r\n{\"name\":\"Tote\"}\r\n{\"name\":\"Vegan leather bag\"}",
     "{\"name\":\"Imitation leather (polyurethane) tote\"}\r\n\r\n{\"name\":\"Tote\"}\r\n{\"name\":\"Imitation leather "
     "bag\"}"},
    {"lines_values_are_escaped", "a.jsonl",
     "{\"material\":[\"PU \\\"leather\\\"\",\"PU "
     "leather\"],\"additionalProperty\":{\"name\":\"Lining\",\"value\":\"vegan "
     "leather\"}}\n",
     "{\"material\":[\"PU \\\"leather\\\"\",\"Imitation leather "
     "(polyurethane)\"],\"additionalProperty\":{\"name\":\"Lining\",\"value\":\"imitation leather\"}}\n"},
};

TEST_P(RewordFormats, DiffAppliesAndGivesTheOutFile) {
    const FormatRow& row = GetParam();
    const std::string file(row.file);
    write_file(file, row.text);
    const ProcessResult out = run({"reword", file, "--out", "mended", "--diff"});
    EXPECT_EQ(out.err.find("error"), std::string::npos) << out.err;
    EXPECT_EQ(read_file(folder() / "mended"), row.want);
    EXPECT_EQ(read_file(folder() / file), row.text);
    const ProcessResult alone = run({"reword", file, "--diff"});
    EXPECT_EQ(alone.out, out.out);
    const ProcessResult patch = patched(file, out.out);
    EXPECT_EQ(patch.status, 0) << patch.out << patch.err << out.out;
    EXPECT_EQ(read_file(folder() / file), row.want);
    EXPECT_EQ(run({"reword", file, "--diff"}).out, "") << "rewording again changes nothing";
}

INSTANTIATE_TEST_SUITE_P(Rows, RewordFormats, testing::ValuesIn(kFormats),
                         [](const auto& row) { return std::string(row.param.name); });

TEST_F(Reword, ShowsTheDifferenceAndWhatIsLeftApart) {
    write_file("tote.txt", "Waterproof tote in vegan leather.\n");
    const ProcessResult result = run({"reword", "tote.txt"});
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(result.out,
              "--- tote.txt\n+++ tote.txt\n@@ -1 +1 @@\n-Waterproof tote in vegan leather.\n"
              "+Waterproof tote in imitation leather.\n");
    EXPECT_NE(result.err.find("tote.txt:1, left for a person:\n  unsupported      'Waterproof' in description\n"),
              std::string::npos)
        << result.err;
    EXPECT_NE(result.err.find("remedy"), std::string::npos);
    EXPECT_TRUE(result.err.ends_with("1 edit; 1 finding left for a person: 1 unsupported\n")) << result.err;
}

TEST_F(Reword, LeavesQuotationsForAPerson) {
    const std::string quoted = "Our founder: \xE2\x80\x9CI love this vegan leather bag.\xE2\x80\x9D\n";
    write_file("tote.txt", quoted + "Our \"vegan leather\" is soft.\n");
    const ProcessResult result = run({"reword", "tote.txt", "--out", "mended.txt"});
    EXPECT_EQ(result.status, 1);
    EXPECT_EQ(read_file(folder() / "mended.txt"), quoted + "Our \"imitation leather\" is soft.\n");
    EXPECT_NE(result.out.find("no edit      it stands in a quotation, and what others said is theirs\n"),
              std::string::npos)
        << result.out;
}

TEST_F(Reword, TellsWhichStatementItTakesAsTrue) {
    write_file("sofa.jsonl",
               "{\"name\":\"Genuine leather sofa\",\"description\":\"The cover is split leather.\"}\n"
               "{\"name\":\"Vegan leather tote\"}\n");
    const ProcessResult result = run({"reword", "sofa.jsonl"});
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(result.err,
              "sofa.jsonl:1, where it disagrees with itself, taken as true:\n"
              "  'split leather' in description, so that 'Genuine leather' in name becomes\n    'Split leather'\n\n"
              "2 edits; no findings left for a person\n");
    // Beside the difference alone it is not told.
    EXPECT_EQ(run({"reword", "--diff", "sofa.jsonl"}).err, "");
}

TEST_F(Reword, ExitStatusTellsWhatIsLeft) {
    write_file("fine.txt", "Tote in vegan leather.");
    write_file("left.txt", "Lining: 70% cotton, 40% polyester.");
    write_file("vague.txt", "It is durable. Waterproof.");
    EXPECT_EQ(run({"reword", "--diff", "fine.txt"}).status, 0);
    EXPECT_EQ(run({"reword", "--diff", "left.txt"}).status, 1);
    EXPECT_EQ(run({"reword", "--diff", "vague.txt"}).status, 0);
    EXPECT_EQ(run({"reword", "--diff", "--fail-at", "unsupported", "vague.txt"}).status, 1);
    EXPECT_EQ(run({"reword", "--diff", "none.txt"}).status, 2);
    EXPECT_EQ(run({"reword", "--diff", "none.txt", "fine.txt"}).status, 2);
    EXPECT_NE(run({"reword", "--diff", "none.txt", "fine.txt"}).out, "") << "the others are done all the same";
}

TEST_F(Reword, NeverWritesOverAnInput) {
    write_file("tote.txt", "Tote in vegan leather.");
    fs::create_symlink("tote.txt", folder() / "link.txt");
    fs::create_hard_link(folder() / "tote.txt", folder() / "hard.txt");
    for (const std::string& target : {std::string("tote.txt"), std::string("./tote.txt"), std::string("link.txt"),
                                      std::string("hard.txt"), (folder() / "tote.txt").string()}) {
        const ProcessResult result = run({"reword", "tote.txt", "--out", target});
        EXPECT_EQ(result.status, 2) << target;
        EXPECT_NE(result.err.find("never written over"), std::string::npos) << result.err;
    }
    EXPECT_EQ(read_file(folder() / "tote.txt"), "Tote in vegan leather.");
    ProcessCall call;
    call.program = "/bin/sh";
    call.arguments = {"-c", std::string(GRAINSIDE_TOOL) + " reword --out tote.txt < tote.txt"};
    call.folder = folder();
    EXPECT_EQ(run_process(call).status, 2);
    EXPECT_EQ(read_file(folder() / "tote.txt"), "Tote in vegan leather.");
    write_file("other.txt", "Tote.");
    EXPECT_EQ(run({"reword", "tote.txt", "other.txt", "--out", "new.txt"}).status, 2);
    EXPECT_FALSE(fs::exists(folder() / "new.txt"));
}

TEST_F(Reword, TellsWhereTheFileCannotBeWritten) {
    write_file("tote.txt", "Tote in vegan leather.");
    for (const std::string_view target : {"no/such/folder.txt", "/dev/full", "."}) {
        const ProcessResult result = run({"reword", "tote.txt", "--out", std::string(target)});
        EXPECT_EQ(result.status, 2) << target;
        EXPECT_NE(result.err.find("cannot be written: "), std::string::npos) << result.err;
    }
    ProcessCall full = call_of({"reword", "tote.txt"});
    full.out = Stream::full_disk;
    EXPECT_EQ(run_process(full).status, 2);
}

TEST_F(Reword, ReadsStandardInput) {
    const ProcessResult result = run_with_input({"reword", "--out", "mended.txt"}, "Tote in vegan leather.\n");
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(read_file(folder() / "mended.txt"), "Tote in imitation leather.\n");
    EXPECT_EQ(result.out, "1 edit; no findings left for a person\n");
    EXPECT_EQ(result.err, "");
    const ProcessResult json = run_with_input({"reword", "--diff", "-"}, "{\"name\":\"PU leather tote\"}\n");
    EXPECT_NE(json.out.find("+{\"name\":\"Imitation leather (polyurethane) tote\"}\n"), std::string::npos) << json.out;
}

// A terminal whose other side is gone gives what was written to it, and then an input error.
TEST_F(Reword, APartOfAnInputIsNotTheWhole) {
    const int input = ::posix_openpt(O_RDWR | O_NOCTTY);
    ASSERT_GE(input, 0);
    ASSERT_EQ(::grantpt(input), 0);
    ASSERT_EQ(::unlockpt(input), 0);
    const int writer = ::open(::ptsname(input), O_RDWR | O_NOCTTY);
    ASSERT_GE(writer, 0);
    const std::string_view text = "Tote in vegan leather.\n";
    ASSERT_EQ(::write(writer, text.data(), text.size()), static_cast<ssize_t>(text.size()));
    ::close(writer);
    ProcessCall call;
    call.program = "/bin/sh";
    call.arguments = {"-c",
                      std::string("exec '" GRAINSIDE_TOOL "' reword --out mended.txt <&") + std::to_string(input)};
    call.folder = folder();
    const ProcessResult result = run_process(call);
    ::close(input);
    EXPECT_EQ(result.status, 2);
    EXPECT_NE(result.err.find("cannot be read to its end"), std::string::npos) << result.err;
    EXPECT_FALSE(fs::exists(folder() / "mended.txt"));
}

TEST_F(Reword, DoesTheOthersWhereARecordIsBroken) {
    const std::string broken = "{\"name\":\n{\"name\":\"PU leather tote\"}\nnonsense\n";
    write_file("a.jsonl", broken);
    const ProcessResult result = run({"reword", "a.jsonl", "--out", "b.jsonl"});
    EXPECT_EQ(result.status, 2);
    EXPECT_EQ(read_file(folder() / "b.jsonl"),
              "{\"name\":\n{\"name\":\"Imitation leather (polyurethane) tote\"}\nnonsense\n");
}

// Escape sequences and overrides of the writing direction: as they are in a file, so that the difference applies, and
// inert on a terminal.
TEST_F(Reword, HostileTextStaysInertOnATerminal) {
    const std::string hostile = "\x1B]0;owned\x07\xE2\x80\xAE Tote in vegan leather, waterproof\x1B[2J.\n";
    write_file("h.txt", hostile);
    const ProcessResult plain = run({"reword", "--diff", "h.txt"});
    EXPECT_NE(plain.out.find("-" + hostile), std::string::npos);
    ProcessCall call = call_of({"reword", "h.txt"});
    call.out = Stream::terminal;
    call.err = Stream::terminal;
    const ProcessResult shown = run_process(call);
    for (const std::string& text : {shown.out, shown.err}) {
        EXPECT_EQ(text.find('\x1B'), std::string::npos) << text;
        EXPECT_EQ(text.find("\xE2\x80\xAE"), std::string::npos) << text;
    }
    EXPECT_NE(shown.out.find("imitation leather"), std::string::npos);
    EXPECT_EQ(run({"reword", "h.txt"}).err.find('\x1B'), std::string::npos);
}

TEST_F(Reword, FileNamesCannotForgeLines) {
    write_file("a\n+++ b.txt", "Tote in vegan leather.\n");
    const ProcessResult result = run({"reword", "--diff", "a\n+++ b.txt"});
    EXPECT_TRUE(result.out.starts_with("--- \"a\\012+++ b.txt\"\n+++ \"a\\012+++ b.txt\"\n@@ ")) << result.out;
    write_file("a b.txt", "Tote in vegan leather.\n");
    const ProcessResult spaced = run({"reword", "--diff", "a b.txt"});
    write_file("change.diff", spaced.out);
    ProcessCall call;
    call.program = "/bin/sh";
    call.arguments = {"-c", "patch -p0 < change.diff"};
    call.folder = folder();
    EXPECT_EQ(run_process(call).status, 0) << spaced.out;
    EXPECT_EQ(read_file(folder() / "a b.txt"), "Tote in imitation leather.\n");
}

// Changes that touch, lie near and lie far apart, at both ends of the file: every hunk has to find its place.
TEST_F(Reword, ManyHunksApply) {
    std::string text;
    for (int line = 0; line < 400; ++line) {
        const bool bad = line % 17 == 0 || line % 5 == 2 || (line > 200 && line < 260) || line == 399;
        text += std::to_string(line) + (bad ? ". Tote in vegan leather.\n" : ". Tote in cotton.\n");
    }
    write_file("a.txt", text);
    const ProcessResult diff = run({"reword", "a.txt", "--diff", "--out", "b.txt"});
    const ProcessResult patch = patched("a.txt", diff.out);
    EXPECT_EQ(patch.status, 0) << patch.out << patch.err;
    EXPECT_EQ(patch.out.find("offset"), std::string::npos) << patch.out;
    EXPECT_EQ(read_file(folder() / "a.txt"), read_file(folder() / "b.txt"));
    EXPECT_EQ(read_file(folder() / "b.txt").find("vegan"), std::string::npos);
}

// A hunk of many megabytes is cut into pieces that apply, and memory does not grow with the catalog.
TEST_F(Reword, CatalogsStreamInBoundedMemory) {
    const auto catalog = [&](const std::string& name, std::size_t bytes) {
        const std::string words(1500, 'x');
        std::string text;
        while (text.size() < bytes) {
            text += "{\"name\":\"Vegan leather tote\",\"description\":\"" + words + "\"}\n";
        }
        write_file(name, text);
    };
#ifdef GRAINSIDE_UNDER_SANITIZER
    constexpr std::size_t kSmall = std::size_t{1} << 20U;
#else
    constexpr std::size_t kSmall = std::size_t{12} << 20U;
#endif
    catalog("small.jsonl", kSmall);
    catalog("large.jsonl", 4 * kSmall);
    // Through a shell that becomes the tool, so that what this process holds is not counted.
    const auto peak = [&](const std::string& name) {
        ProcessCall call;
        call.program = "/bin/sh";
        call.arguments = {"-c", "exec '" GRAINSIDE_TOOL "' reword --diff --out " + name + ".out " + name + ".jsonl > " +
                                    name + ".diff"};
        call.folder = folder();
        const ProcessResult result = run_process(call);
        EXPECT_EQ(result.status, 0) << result.err;
        return result.peak_kibibytes;
    };
    const long small = peak("small");
    const long large = peak("large");
#ifdef GRAINSIDE_UNDER_SANITIZER
    // Their shadow memory is none of ours.
    EXPECT_GT(small + large, 0);
#else
    EXPECT_LT(large, small + 8 * 1024);
#endif
    const ProcessResult patch = patched("small.jsonl", read_file(folder() / "small.diff"));
    EXPECT_EQ(patch.status, 0) << patch.out << patch.err;
    EXPECT_EQ(read_file(folder() / "small.jsonl"), read_file(folder() / "small.out"));
}

// ---- dossiers --------------------------------------------------------------------------------------------------

constexpr std::string_view kReadings =
    "parts:\n"
    "  lining:\n"
    "    readings:\n"
    "      - {method: species-laboratory, outcome: reads-pig}\n";

struct YamlRow {
    std::string_view name;
    std::string_view listing;
    std::string_view want;
};
std::ostream& operator<<(std::ostream& out, const YamlRow& row) {
    return out << row.name;
}

class RewordDossier : public Reword, public testing::WithParamInterface<YamlRow> {};

// The styles of YAML 1.2.2: flow scalars (7.3) and block scalars (8.1).
constexpr YamlRow kYaml[] = {
    {"plain", "  description: Lining of goat leather, vegan leather strap.  # as seen\n",
     "  description: Lining of pigskin leather, imitation leather strap.  # as seen\n"},
    {"single_quoted", "  description: 'It''s fine. Lining: goat leather.'\n",
     "  description: 'It''s fine. Lining: pigskin leather.'\n"},
    {"double_quoted", "  description: \"The \\\"Calla\\\". Lining: goat leather.\"\n",
     "  description: \"The \\\"Calla\\\". Lining: pigskin leather.\"\n"},
    {"literal_block", "  description: |\n    First line.\n    Lining: goat leather.\n\n    End.\n",
     "  description: |\n    First line.\n    Lining: pigskin leather.\n\n    End.\n"},
    {"folded_block", "  description: >-\n    First line goes on\n    here. Lining: goat leather.\n",
     "  description: >-\n    First line goes on\n    here. Lining: pigskin leather.\n"},
    {"plain_over_lines", "  description: First line goes on\n    here. Lining of goat leather.\n",
     "  description: First line goes on\n    here. Lining of pigskin leather.\n"},
    {"attributes", "  name: Strap\n  attributes:\n    Lining: goat leather\n",
     "  name: Strap\n  attributes:\n    Lining: pigskin leather\n"},
    {"in_braces", "  {description: 'Lining: goat leather.', name: Strap}\n",
     "  {description: 'Lining: pigskin leather.', name: Strap}\n"},
};

TEST_P(RewordDossier, EditsTheListingInsideTheYaml) {
    const auto dossier = [](std::string_view listing) {
        return "# a comment\nsample: {what: strap, category: watch-strap}\nlisting:\n" + std::string(listing) +
               std::string(kReadings);
    };
    write_file("strap.yaml", dossier(GetParam().listing));
    const ProcessResult result = run({"reword", "--diff", "--out", "mended.yaml", "strap.yaml"});
    EXPECT_EQ(result.err.find("error"), std::string::npos) << result.err;
    EXPECT_EQ(read_file(folder() / "mended.yaml"), dossier(GetParam().want));
    const ProcessResult patch = patched("strap.yaml", result.out);
    EXPECT_EQ(patch.status, 0) << patch.out << patch.err;
    EXPECT_EQ(read_file(folder() / "strap.yaml"), dossier(GetParam().want));
}

INSTANTIATE_TEST_SUITE_P(Rows, RewordDossier, testing::ValuesIn(kYaml),
                         [](const auto& row) { return std::string(row.param.name); });

// The longest scalar of a dossier has 256 KiB: a wording that is longer than the words does not fit behind it.
TEST_F(Reword, TellsWhyAMendedDossierCannotBeRead) {
    std::string text = "sample: {what: strap, category: watch-strap}\nlisting:\n  description: |\n";
    for (int line = 0; line < 2000; ++line) text += "    PU leather. " + std::string(100, 'x') + "\n";
    write_file("strap.yaml", text + std::string(kReadings));
    const ProcessResult result = run({"reword", "--out", "mended.yaml", "strap.yaml"});
    EXPECT_EQ(result.status, 2);
    EXPECT_NE(result.err.find("256 KiB"), std::string::npos) << result.err;
    EXPECT_NE(result.err.find("would not be read with the edits in it"), std::string::npos) << result.err;
    EXPECT_EQ(result.err.find("block scalars"), std::string::npos) << result.err;
    EXPECT_FALSE(fs::exists(folder() / "mended.yaml"));
}

// Each scalar is walked once, whatever the number of its edits.
TEST_F(Reword, ManyEditsInADossierStayLinear) {
    const auto seconds = [&](std::size_t edits) {
        std::string text = "sample: {what: strap, category: watch-strap}\nlisting:\n  description: >\n";
        std::string want = text;
        for (std::size_t i = 0; i < edits; ++i) {
            text += "    Faux fur. A vegan leather.\n";
            want += "    Faux fur. An imitation leather.\n";
        }
        write_file("strap.yaml", text + std::string(kReadings));
        const auto begin = std::chrono::steady_clock::now();
        run({"reword", "--diff", "--out", "mended.yaml", "strap.yaml"});
        const auto end = std::chrono::steady_clock::now();
        EXPECT_EQ(read_file(folder() / "mended.yaml"), want + std::string(kReadings)) << edits;
        return std::chrono::duration<double>(end - begin).count();
    };
    const double small = seconds(1000);
    const double large = seconds(7000);
    EXPECT_LT(large, small * 7 * 3) << "quadratic would be 49 times";
}

TEST_F(Reword, EditsTheListingFileOfADossier) {
    write_file("bench/strap.md", "# Strap\n\nLining: goat leather.\n");
    write_file("bench/strap.yaml",
               "sample: {what: strap, category: watch-strap}\nlisting: {file: strap.md}\n" + std::string(kReadings));
    const ProcessResult result = run({"reword", "--diff", "bench/strap.yaml"});
    EXPECT_EQ(result.status, 0) << result.err;
    EXPECT_NE(result.out.find("--- bench/strap.md\n"), std::string::npos) << result.out;
    EXPECT_NE(result.out.find("+Lining: pigskin leather.\n"), std::string::npos) << result.out;
    const ProcessResult over = run({"reword", "--out", "bench/strap.md", "bench/strap.yaml"});
    EXPECT_EQ(over.status, 2);
    EXPECT_EQ(read_file(folder() / "bench/strap.md"), "# Strap\n\nLining: goat leather.\n");
}

// Every dossier and demo of the corpus: no error, and the difference applies.
TEST_F(Reword, DossiersOfTheCorpusGoThrough) {
    std::size_t dossiers = 0;
    for (const auto& entry : fs::directory_iterator(GRAINSIDE_DOSSIERS)) {
        fs::copy(entry.path(), folder() / entry.path().filename());
    }
    for (const auto& entry : fs::directory_iterator(GRAINSIDE_DOSSIERS)) {
        const std::string name = entry.path().filename().string();
        if (!name.ends_with(".yaml")) continue;
        if (read_file(entry.path()).find("\nlisting:") == std::string::npos) continue;
        const ProcessResult result = run({"reword", "--diff", "--out", "mended", name});
        EXPECT_NE(result.status, 2) << name << result.err;
        const bool own_file = result.out.find("--- " + name) == std::string::npos;
        if (!result.out.empty() && !own_file) {
            EXPECT_EQ(patched(name, result.out).status, 0) << name;
            EXPECT_EQ(read_file(folder() / name), read_file(folder() / "mended"));
        }
        ++dossiers;
    }
    EXPECT_GE(dossiers, 25U);
    EXPECT_EQ(run({"reword", "no_listing_loafers.yaml"}).status, 2);
}

}  // namespace
}  // namespace grainside::tests
