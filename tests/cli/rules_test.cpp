// grainside rules: list, show, prove, and folders that cannot be loaded.
#include <string>
#include <string_view>

#include "cli_test.h"

namespace grainside::tests {
namespace {

class Rules : public CliTest {
protected:
    void SetUp() override {
        CliTest::SetUp();
        write_small_book("book");
    }
};

TEST_F(Rules, AreListed) {
    const ProcessResult result = run({"rules", "list", "--rules", "book"});
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(result.out,
              "plastic-named      rules  misleading   us,eu  A plastic is named\n"
              "cotton-named       rules  vague        all    Cotton is named\n"
              "silk-beside-linen  rules  misleading   all    Silk beside linen\n"
              "wool-named-later   rules  unsupported  all    Wool is named, from 2030 on\n");
}

TEST_F(Rules, AreListedAsRecords) {
    const ProcessResult result = run({"rules", "list", "--rules", "book", "--format", "jsonl"});
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(
        lines_of(result.out).at(3),
        R"({"rule":"wool-named-later","group":"rules","title":"Wool is named, from 2030 on","grade":"unsupported","basis":"wording",)"
        R"("markets":[],"from":"2030-01-01","because":"Wool needs proof from then on.","sources":["seen-law"],)"
        R"("file":"book/wording/rules.yaml","line":49})");
}

TEST_F(Rules, AreShown) {
    const ProcessResult result = run({"rules", "show", "--rules", "book", "plastic-named"});
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(result.out, R"(plastic-named
A plastic is named

group        rules
grade        misleading
basis        wording
markets      us,eu
in force     always
because      Polyurethane is a "plastic", says the rule of the tests.
say instead  {part} of plastic sheet
file         book/wording/rules.yaml:1

sources:
  - Law of the tests, section 1 [seen-law]
    Names must be true.
  - Standard of the tests (from memory) [unseen-standard]
    Names should be plain.

must flag:
  - Polyurethane.
    words: Polyurethane
  - Of polyurethane.
    words: polyurethane
  - Soft polyurethane.
    words: polyurethane

must pass:
  - Wood.
  - Stone.
  - Paper.
)");
}

TEST_F(Rules, AreShownAsRecord) {
    const ProcessResult result = run({"rules", "show", "--rules", "book", "cotton-named", "--format", "jsonl"});
    EXPECT_EQ(result.status, 0);
    EXPECT_EQ(
        result.out,
        R"({"rule":"cotton-named","group":"rules","title":"Cotton is named","grade":"vague","basis":"wording","markets":[],)"
        R"("because":"Cotton tells little.","sources":[{"source":"seen-law","cite":"Law of the tests, section 1",)"
        R"("says":"Names must be true.","from_memory":false}],"file":"book/wording/rules.yaml","line":18,)"
        R"("condition":["It flags a claim that says cotton."],)"
        R"("flags":[{"text":"Cotton.","words":"Cotton","line":26},{"text":"Of cotton.","words":"cotton","line":27},)"
        R"({"text":"Soft cotton.","words":"cotton","line":28}],"passes":[{"text":"Wood.","line":30},)"
        R"({"text":"Stone.","line":31},{"text":"Paper.","line":32}]})"
        "\n");
}

TEST_F(Rules, AreSoughtByTheirId) {
    const ProcessResult near = run({"rules", "show", "--rules", "book", "coton-named"});
    EXPECT_EQ(near.status, 2);
    EXPECT_EQ(near.out, "");
    EXPECT_EQ(near.err, "grainside: error: there is no rule 'coton-named'\n  hint: did you mean `cotton-named`?\n");
    const ProcessResult far = run({"rules", "prove", "--rules", "book", "nothing-like-it"});
    EXPECT_EQ(far.status, 2);
    EXPECT_NE(far.err.find("hint: `grainside rules list` shows all"), std::string::npos) << far.err;
}

TEST_F(Rules, ProveThemselves) {
    const ProcessResult all = run({"rules", "prove", "--rules", "book"});
    EXPECT_EQ(all.status, 0) << all.out;
    EXPECT_EQ(all.out, "4 rules, 24 examples, 0 faults\n");
    const ProcessResult one = run({"rules", "prove", "--rules", "book", "cotton-named"});
    EXPECT_EQ(one.status, 0);
    EXPECT_EQ(one.out, "1 rule, 6 examples, 0 faults\n");
}

TEST_F(Rules, TellWhereAProofFails) {
    std::string rules = read_file(folder() / "book/wording/rules.yaml");
    const std::string_view right = "{text: Soft cotton., words: cotton}";
    rules.replace(rules.find(right), right.size(), "{text: \"Soft \\e[2J wood.\", words: wood}");
    write_file("book/wording/rules.yaml", rules);
    const ProcessResult result = run({"rules", "prove", "--rules", "book"});
    EXPECT_EQ(result.status, 1) << result.err;
    EXPECT_EQ(result.err, "");
    EXPECT_EQ(
        result.out.rfind(
            "book/wording/rules.yaml:28: cotton-named: wanted vague 'wood', found nothing\n  text: Soft ?[2J wood.\n",
            0),
        0U)
        << result.out;
    EXPECT_NE(result.out.find("\n4 rules, 24 examples, 1 fault\n"), std::string::npos);
    const ProcessResult records = run({"rules", "prove", "--rules", "book", "--format", "jsonl"});
    EXPECT_EQ(records.status, 1);
    EXPECT_TRUE(records.out.ends_with("{\"rules\":4,\"examples\":24,\"faults\":1}\n")) << records.out;
}

struct FaultRow {
    std::string_view rule;   // of wording/with_faults.yaml
    std::string_view place;  // line:column of the fault
    std::string_view code;
};

// One fault each; the text around them is right.
constexpr std::string_view kProof =
    "  sources: [seen-law]\n"
    "  proof:\n"
    "    flags: [{text: Cotton., words: Cotton}, {text: Of cotton., words: cotton}, {text: A cotton., words: cotton}]\n"
    "    passes: [{text: Wood.}, {text: Stone.}, {text: Paper.}]\n";

TEST_F(Rules, ReportEveryFaultOfAFolder) {
    const std::string head = "  title: T\n  grade: vague\n  when: {says: cotton}\n  because: B.\n";
    const std::string proof(kProof);
    const std::string faults =
        "- rule: unknown-grade\n  title: T\n  grade: vage\n  when: {says: cotton}\n  because: B.\n" + proof +
        "- rule: unknown-key\n  titel: T\n" + head + proof +
        "- rule: unknown-concept\n  title: T\n  grade: vague\n  when: {says: coton}\n  because: B.\n" + proof +
        "- rule: unknown-source\n" + head + "  sources: [seen-lore]\n" + proof.substr(proof.find("  proof")) +
        "- rule: unknown-market\n  markets: [us, mars]\n" + head + proof +
        "- rule: bad-date\n  in_force: {from: 2026-02-30}\n" + head + proof +
        "- rule: bad-template\n  say_instead: plain {what}\n" + head + proof + "- rule: cotton-named\n" + head + proof +
        "- rule: thin-proof\n" + head + "  sources: [seen-law]\n  proof:\n    flags: []\n    passes: []\n" +
        "- rule: no-because\n  title: T\n  grade: vague\n  when: {says: cotton}\n" + proof;
    write_file("book/wording/with_faults.yaml", faults);
    constexpr FaultRow kFaults[] = {
        {"unknown-grade", "3:10", "unknown-grade"},
        {"unknown-key", "11:3", "unknown-key"},
        {"unknown-concept", "23:16", "unknown-concept"},
        {"unknown-source", "34:13", "unknown-source"},
        {"unknown-market", "39:17", "unknown-market"},
        {"bad-date", "49:20", "wrong-type"},
        {"bad-template", "59:16", "bad-template"},
        {"cotton-named", "68:9", "duplicate-rule"},
        {"thin-proof", "84:5", "thin-proof"},
        {"no-because", "86:3", "missing-key"},
    };
    for (const std::vector<std::string>& command :
         {std::vector<std::string>{"rules", "prove"}, {"rules", "list"}, {"check"}, {"claims"}}) {
        std::vector<std::string> arguments = command;
        arguments.insert(arguments.end(), {"--rules", "book"});
        const ProcessResult result = run(arguments);
        EXPECT_EQ(result.status, 2);
        EXPECT_EQ(result.out, "");
        EXPECT_EQ(count_of(result.err, "grainside: "), std::size(kFaults)) << result.err;
        for (const FaultRow& fault : kFaults) {
            const std::string place =
                "grainside: book/wording/with_faults.yaml:" + std::string(fault.place) + ": error: ";
            const std::size_t at = result.err.find(place);
            ASSERT_NE(at, std::string::npos) << fault.rule << '\n' << result.err;
            const std::vector<std::string> lines = lines_of(std::string_view(result.err).substr(at));
            EXPECT_TRUE(lines.at(0).ends_with('[' + std::string(fault.code) + ']')) << lines.at(0);
            const std::size_t column = std::stoul(std::string(fault.place.substr(fault.place.find(':') + 1)));
            EXPECT_EQ(lines.at(2), std::string(1 + column, ' ') + '^') << fault.rule;
        }
    }
}

TEST_F(Rules, NeedAFolder) {
    write_file("file.yaml", "- {}\n");
    for (const std::string name : {"missing", "file.yaml"}) {
        const ProcessResult result = run({"check", "--rules", name});
        EXPECT_EQ(result.status, 2);
        EXPECT_EQ(result.out, "");
        EXPECT_EQ(count_of(result.err, "grainside: "), 1U) << result.err;
        EXPECT_EQ(result.err.rfind("grainside: " + name + ": error: the rule folder ", 0), 0U) << result.err;
    }
}

}  // namespace
}  // namespace grainside::tests
