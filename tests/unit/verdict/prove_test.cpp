// Proving a small book whose proofs are wrong in every way that a proof can be.
#include "verdict/proof.h"

#include <gtest/gtest.h>

#include <stdexcept>
#include <string>
#include <string_view>

#include "support/small_rules.h"

namespace grainside {
namespace {

constexpr std::string_view kWords = R"(
- {says: polyurethane, words: [polyurethane]}
- {says: cotton, words: [cotton]}
- {says: silk, words: [silk]}
- {says: linen, words: [linen]}
- {part: lining, nouns: [lining]}
)";

// Proofs that hold; `broken` is put in front of them.
std::string rule(const std::string& id, const std::string& says, const std::string& more,
                 const std::string& broken_flags, const std::string& broken_passes) {
    return "- rule: " + id + "\n  title: T\n  grade: misleading\n  when: {says: " + says +
           "}\n  because: B.\n  sources: law\n" + more + "  proof:\n    flags:\n" + broken_flags +
           "      - {text: Of " + says + "., words: " + says + "}\n      - {text: In " + says + "., words: " + says +
           "}\n      - {text: With " + says + "., words: " + says + "}\n    passes:\n" + broken_passes +
           "      - {text: Wood.}\n      - {text: Stone.}\n      - {text: Paper.}\n";
}

RuleBook load(const std::string& rules) {
    const support::RuleFolder folder({{"sources.yaml", "- {source: law, cite: A law, says: It says., how: seen}\n"},
                                      {"markets.yaml", "- {market: us}\n- {market: eu}\n"},
                                      {"vocabulary/en/words.yaml", std::string(kWords)},
                                      {"wording/a.yaml", rules}});
    Result<RuleBook> book = RuleBook::load(folder.path());
    if (!book) throw std::runtime_error(to_text(book.issues().front()));
    return std::move(book).value();
}

// "rule line: text -> message", one a line.
std::string dump(const ProofReport& report) {
    std::string text;
    for (const ProofFault& fault : report.faults) {
        EXPECT_EQ(fault.file, "wording/a.yaml");
        text += fault.rule + " " + std::to_string(fault.line) + ": " + fault.text + " -> " + fault.message + "\n";
    }
    return text;
}

TEST(Prove, AGoodBookHasNoFaults) {
    const RuleBook book = load(rule("r", "polyurethane", "", "", "") + rule("s", "cotton", "", "", ""));
    const ProofReport report = prove(book, "r");
    EXPECT_EQ(dump(report), "");
    EXPECT_EQ(report.rules, 1U);
    EXPECT_EQ(report.examples, 6U);
}

TEST(Prove, ATextThatIsNotFlaggedIsReported) {
    const RuleBook book = load(rule("r", "polyurethane", "", "      - {text: Of linen., words: linen}\n", ""));
    EXPECT_EQ(dump(prove(book)), "r 9: Of linen. -> wanted misleading 'linen', found nothing\n");
}

TEST(Prove, OtherWordsThanNamedAreReported) {
    const RuleBook book =
        load(rule("r", "polyurethane", "", "      - {text: Of polyurethane., words: Of polyurethane}\n", ""));
    EXPECT_EQ(dump(prove(book)),
              "r 9: Of polyurethane. -> wanted misleading 'Of polyurethane', found misleading 'polyurethane' [r]\n");
}

TEST(Prove, AnotherRulesFindingIsReported) {
    const RuleBook book = load(rule("r", "polyurethane", "", "      - {text: Of cotton., words: cotton}\n", "") +
                               rule("s", "cotton", "", "", ""));
    EXPECT_EQ(dump(prove(book)), "r 9: Of cotton. -> wanted misleading 'cotton', found misleading 'cotton' [s]\n");
}

TEST(Prove, AFindingTooManyIsReported) {
    const RuleBook book =
        load(rule("r", "polyurethane", "", "      - {text: Of polyurethane. Of cotton., words: polyurethane}\n", "") +
             rule("s", "cotton", "", "", ""));
    EXPECT_EQ(
        dump(prove(book, "r")),
        "r 9: Of polyurethane. Of cotton. -> wanted misleading 'polyurethane', found misleading 'polyurethane' [r]; "
        "misleading 'cotton' [s]\n");
}

TEST(Prove, ATextThatShouldPassIsReported) {
    const RuleBook book = load(rule("r", "polyurethane", "", "", "      - {title: Polyurethane., text: x}\n"));
    EXPECT_EQ(dump(prove(book)),
              "r 13: name: Polyurethane. | x -> wanted nothing, found misleading 'Polyurethane' [r]\n");
}

TEST(Prove, ASuggestedWordingThatDoesNotPassIsReported) {
    const RuleBook book = load(rule("r", "polyurethane", "  say_instead: \"plain {says}\"\n", "", ""));
    const std::string found = dump(prove(book));
    EXPECT_NE(found.find("r 10: Of polyurethane. -> the suggested wording 'plain polyurethane' does not pass: "
                         "misleading 'polyurethane' [r]\n"),
              std::string::npos)
        << found;
}

TEST(Prove, AllFaultsComeAtOnceAndOneRuleAlone) {
    const RuleBook book = load(rule("r", "polyurethane", "", "      - {text: Of linen., words: linen}\n",
                                    "      - {text: Of polyurethane.}\n") +
                               rule("s", "cotton", "", "      - {text: Of silk., words: silk}\n", ""));
    const ProofReport all = prove(book);
    EXPECT_EQ(all.rules, 2U);
    EXPECT_EQ(all.examples, 15U);
    EXPECT_EQ(all.faults.size(), 3U);
    EXPECT_EQ(prove(book, "s").faults.size(), 1U);
    EXPECT_EQ(prove(book, "none").rules, 0U);
}

TEST(Prove, UsesTheRulesOwnMarketAndDay) {
    const RuleBook book = load(rule("r", "polyurethane", "  markets: eu\n  in_force: {from: 2026-09-27}\n", "", ""));
    EXPECT_EQ(dump(prove(book)), "");
}

}  // namespace
}  // namespace grainside
