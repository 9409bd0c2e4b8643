// A bad file for each fault of a rule folder, with the exact place.
#include <gtest/gtest.h>

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "support/fault_dump.h"
#include "support/small_rules.h"

namespace grainside::rules {
namespace {

constexpr std::string_view kSources = "- {source: law, cite: A law, says: It says., how: seen}\n";
constexpr std::string_view kMarkets = "- {market: us}\n- {market: eu}\n- {market: it, within: eu}\n";
// The last lines of every rule; `when` and what else differs stand in line 3 and above them.
constexpr std::string_view kRest =
    "  because: B.\n  sources: law\n  proof:\n"
    "    flags: [{text: a, words: a}, {text: b, words: b}, {text: c, words: c}]\n"
    "    passes: [{text: d}, {text: e}, {text: f}]\n";

std::string places_of(const std::map<std::string, std::string>& files) {
    BookData book;
    document::Faults faults;
    support::load_small_rules(files, book, faults);
    return support::dump_places(faults.take());
}

std::string places_of_rules(const std::string& rules) {
    return places_of(
        {{"sources.yaml", std::string(kSources)}, {"markets.yaml", std::string(kMarkets)}, {"wording/a.yaml", rules}});
}

struct Row {
    std::string_view name, text, want;
};

// One line of a rule (its third), whose first lines are right.
constexpr Row kLines[] = {
    {"right", "  when: {says: leather}\n", ""},
    // unknown-key
    {"unknown_key_of_a_rule", "  when: {says: leather}\n  colour: red\n", "4:3 unknown-key"},
    {"unknown_key_of_a_condition", "  when: {say: leather}\n", "3:10 unknown-key"},
    {"reach_stands_in_beside_only", "  when: {says: leather, reach: part}\n", "3:25 unknown-key"},
    {"unknown_key_of_beside", "  when: {says: leather}\n  beside: {says: cotton, far: yes}\n", "4:26 unknown-key"},
    // the values of a condition
    {"unknown_concept", "  when: {says: lether}\n", "3:16 unknown-concept"},
    {"unknown_concept_in_a_list", "  when: {says: [leather, lether]}\n", "3:26 unknown-concept"},
    {"unknown_concept_says_only", "  when: {says_only: lether}\n", "3:21 unknown-concept"},
    {"unknown_concept_not_says", "  when: {says: leather, not_says: sued}\n", "3:35 unknown-concept"},
    {"unknown_concept_called", "  when: {called: hyde}\n", "3:18 unknown-concept"},
    {"unknown_concept_unless", "  when: {says: leather}\n  unless: {says: sued}\n", "4:18 unknown-concept"},
    {"unknown_kind", "  when: {kind: stuff}\n", "3:16 unknown-kind"},
    {"unknown_part", "  when: {part: pocket}\n", "3:16 unknown-part"},
    {"unknown_not_part", "  when: {not_part: [body, pocket]}\n", "3:27 unknown-part"},
    {"unknown_category", "  when: {category: bags}\n", "3:20 unknown-category"},
    {"unknown_mark", "  when: {marked: shiny}\n", "3:18 unknown-mark"},
    {"unknown_mark_unmarked", "  when: {unmarked: [genuine, shiny]}\n", "3:30 unknown-mark"},
    {"unknown_reach", "  when: {says: leather}\n  beside: {says: cotton, reach: far}\n", "4:33 unknown-reach"},
    {"unknown_concept_in_place", "  when: {in_place: atlantis}\n", "3:20 unknown-concept"},
    {"in_place_of_no_place", "  when: {in_place: [italy, leather]}\n", "3:28 unknown-place"},
    {"in_place_of_all_places", "  when: {in_place: place}\n", "3:20 unknown-place"},
    {"wrong_type_in_place", "  when: {in_place: {from: italy}}\n", "3:20 wrong-type"},
    {"wrong_type_negated", "  when: {negated: maybe}\n", "3:19 wrong-type"},
    {"wrong_type_quoted_yes", "  when: {negated: 'yes'}\n", "3:19 wrong-type"},
    {"wrong_type_hedged", "  when: {hedged: true}\n", "3:18 wrong-type"},
    {"wrong_type_place", "  when: {says: leather}\n  beside: {says: cotton, place: near}\n", "4:33 wrong-type"},
    {"wrong_type_says", "  when: {says: {a: b}}\n", "3:16 wrong-type"},
    {"wrong_type_when", "  when: leather\n", "1:3 missing-key; 3:9 wrong-type"},
    {"wrong_type_share", "  when: {share: 50}\n", "3:17 wrong-type"},
    {"wrong_type_share_number", "  when: {share: {from: 010}}\n", "3:24 wrong-type"},
    {"out_of_range", "  when: {share: {from: 60, to: 40}}\n", "3:17 out-of-range"},
    {"unknown_key_of_share", "  when: {share: {above: 60}}\n", "3:18 unknown-key"},
    // of the rule
    {"missing_when", "  unless: {says: leather}\n", "1:3 missing-key"},
    {"unknown_market", "  when: {says: leather}\n  markets: [us, mars]\n", "4:17 unknown-market"},
    {"bad_date", "  when: {says: leather}\n  in_force: {from: 2024-02-30}\n", "4:20 wrong-type"},
    {"dates_the_wrong_way_round", "  when: {says: leather}\n  in_force: {from: 2025-01-01, until: 2024-01-01}\n",
     "4:13 bad-date"},
    {"wrong_type_over_list", "  when: {says: leather}\n  over_list: often\n", "4:14 wrong-type"},
    {"template_unknown_value", "  when: {says: leather}\n  say_instead: \"{colour}\"\n", "4:16 bad-template"},
    {"template_not_closed", "  when: {says: leather}\n  say_instead: \"a {says\"\n", "4:16 bad-template"},
    {"template_not_opened", "  when: {says: leather}\n  say_instead: \"says}\"\n", "4:16 bad-template"},
    {"template_empty_braces", "  when: {says: leather}\n  say_instead: \"{}\"\n", "4:16 bad-template"},
    {"template_brace_in_braces", "  when: {says: leather}\n  say_instead: \"{{says}}\"\n", "4:16 bad-template"},
};

class RuleLineFaults : public testing::TestWithParam<Row> {};

TEST_P(RuleLineFaults, AreToldWithTheirPlace) {
    const std::string text =
        "- rule: r\n  grade: vague\n" + std::string(GetParam().text) + "  title: T\n" + std::string(kRest);
    EXPECT_EQ(places_of_rules(text), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, RuleLineFaults, testing::ValuesIn(kLines),
                         [](const auto& row) { return std::string(row.param.name); });

// Whole files.
constexpr Row kFiles[] = {
    {"empty", "", ""},
    {"mapping", "rule: r\n", "1:1 wrong-type"},
    {"text_for_a_rule", "- r\n", "1:3 wrong-type"},
    {"nothing_but_a_name", "- rule: r\n",
     "1:3 missing-key; 1:3 missing-key; 1:3 missing-key; 1:3 missing-key; 1:3 missing-key; 1:3 missing-key"},
    {"unknown_grade",
     "- rule: r\n  title: T\n  grade: bad\n  when: {says: leather}\n  because: B.\n  sources: law\n  proof: {flags: "
     "[{text: a, words: "
     "a}, {text: a, words: a}, {text: a, words: a}], passes: [{text: b}, {text: b}, {text: b}]}\n",
     "3:10 unknown-grade"},
    {"grade_that_needs_evidence",
     "- rule: r\n  title: T\n  grade: contradicted\n  when: {says: leather}\n  because: B.\n  sources: law\n  proof: "
     "{flags: [{text: "
     "a, words: a}, {text: a, words: a}, {text: a, words: a}], passes: [{text: b}, {text: b}, {text: b}]}\n",
     "3:10 unknown-grade"},
    {"unknown_source",
     "- rule: r\n  title: T\n  grade: vague\n  when: {says: leather}\n  because: B.\n  sources: [law, lore]\n  proof: "
     "{flags: [{text: "
     "a, words: a}, {text: a, words: a}, {text: a, words: a}], passes: [{text: b}, {text: b}, {text: b}]}\n",
     "6:18 unknown-source"},
    {"two_examples",
     "- rule: r\n  title: T\n  grade: vague\n  when: {says: leather}\n  because: B.\n  sources: law\n  proof:\n    "
     "flags: [{text: "
     "a, words: a}, {text: a, words: a}]\n    passes: [{text: b}, {text: b}, {text: b}]\n",
     "8:5 thin-proof"},
    {"words_that_stand_nowhere",
     "- rule: r\n  title: T\n  grade: vague\n  when: {says: leather}\n  because: B.\n  sources: law\n  proof:\n    "
     "flags: [{text: "
     "a, words: b}, {text: a, words: a}, {text: a}]\n    passes: [{text: b}, {because: x}, {txt: b}, {text: c}]\n",
     "8:13 unused-words; 8:55 unused-words; 9:25 missing-key; 9:39 missing-key; 9:40 unknown-key"},
};

class RuleFileFaults : public testing::TestWithParam<Row> {};

TEST_P(RuleFileFaults, AreToldWithTheirPlace) {
    EXPECT_EQ(places_of_rules(std::string(GetParam().text)), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, RuleFileFaults, testing::ValuesIn(kFiles),
                         [](const auto& row) { return std::string(row.param.name); });

std::string rule(std::string_view id) {
    return "- rule: " + std::string(id) + "\n  title: T\n  grade: vague\n  when: {says: leather}\n" +
           std::string(kRest);
}

TEST(RuleFaults, DuplicateRuleNamesBothPlaces) {
    BookData book;
    document::Faults faults;
    support::load_small_rules(
        {{"sources.yaml", std::string(kSources)}, {"wording/a.yaml", rule("r")}, {"wording/b.yaml", rule("r")}}, book,
        faults);
    const std::vector<Issue> issues = faults.take();
    ASSERT_EQ(support::dump_files(issues), "wording/b.yaml:1:9 duplicate-rule\n");
    EXPECT_NE(issues[0].hint.find("wording/a.yaml line 1"), std::string::npos) << issues[0].hint;
}

TEST(RuleFaults, Sources) {
    EXPECT_EQ(
        places_of({{"sources.yaml",
                    "- {source: law, cite: C, says: S, how: seen}\n- {source: law, cite: C, says: S, how: seen}\n"}}),
        "2:12 duplicate-source");
    EXPECT_EQ(places_of({{"sources.yaml", "- {source: law, cite: C, how: seen}\n"}}), "1:3 missing-key");
    EXPECT_EQ(places_of({{"sources.yaml", "- {source: law, cite: C, says: S}\n"}}), "1:3 wrong-type");
    EXPECT_EQ(places_of({{"sources.yaml", "- {source: law, cite: C, says: S, how: heard}\n"}}), "1:40 wrong-type");
    EXPECT_EQ(places_of({{"sources.yaml", "- {source: law, cite: C, says: S, how: seen, by: me}\n"}}),
              "1:46 unknown-key");
}

TEST(RuleFaults, Markets) {
    EXPECT_EQ(places_of({{"markets.yaml", "- {within: eu}\n"}}), "1:3 missing-key");
    EXPECT_EQ(places_of({{"markets.yaml", "- {market: us, tax: 1}\n"}}), "1:16 unknown-key");
    EXPECT_EQ(places_of({{"markets.yaml", "- {market: us}\n- {market: us}\n"}}), "2:12 duplicate-market");
    EXPECT_EQ(places_of({{"markets.yaml", "- {market: it, within: eu}\n- {market: eu}\n"}}), "");
    EXPECT_EQ(places_of({{"markets.yaml", "- {market: it, within: eu}\n"}}), "1:24 unknown-market");
}

// Ten faults in four files come in one list, sorted by file and line.
TEST(RuleFaults, OfAWholeFolderAreToldAtOnce) {
    const support::RuleFolder folder({
        {"markets.yaml", "- {market: us, tax: 1}\n"},
        {"sources.yaml",
         "- {source: law, cite: C, says: S, how: seen}\n- {source: two, cite: C, says: S, how: heard}\n"},
        {"vocabulary/en/words.yaml",
         "- {says: lether, words: [lether]}\n- {part: pocket, nouns: [pocket]}\n- {grammar: nix, words: [no]}\n"},
        {"wording/a.yaml",
         "- rule: r\n  title: T\n  grade: bad\n  when: {says: lether, marked: shiny}\n  markets: mars\n  because: B.\n"
         "  say_instead: \"{colour}\"\n  sources: law\n  proof:\n"
         "    flags: [{text: a, words: a}, {text: b, words: b}, {text: c, words: c}]\n"
         "    passes: [{text: d}, {text: e}, {text: f}]\n"},
    });
    const Result<RuleBook> book = RuleBook::load(folder.path());
    ASSERT_FALSE(book);
    EXPECT_EQ(support::dump_files(book.issues()),
              "markets.yaml:1:16 unknown-key\n"
              "sources.yaml:2:40 wrong-type\n"
              "vocabulary/en/words.yaml:1:10 unknown-concept\n"
              "vocabulary/en/words.yaml:2:10 unknown-part\n"
              "vocabulary/en/words.yaml:3:13 unknown-role\n"
              "wording/a.yaml:3:10 unknown-grade\n"
              "wording/a.yaml:4:16 unknown-concept\n"
              "wording/a.yaml:4:32 unknown-mark\n"
              "wording/a.yaml:5:12 unknown-market\n"
              "wording/a.yaml:7:16 bad-template\n");
}

TEST(RuleFaults, SuggestWhatWasMeant) {
    BookData book;
    document::Faults faults;
    support::load_small_rules(
        {{"sources.yaml", std::string(kSources)},
         {"wording/a.yaml",
          "- rule: r\n  title: T\n  grade: vagu\n  when: {says: lether, part: linin}\n" + std::string(kRest)}},
        book, faults);
    const std::vector<Issue> issues = faults.take();
    ASSERT_EQ(issues.size(), 3U);
    EXPECT_EQ(issues[0].hint, "did you mean `vague`?");
    EXPECT_EQ(issues[1].hint, "did you mean `leather`?");
    EXPECT_EQ(issues[2].hint, "did you mean `lining`?");
}

}  // namespace
}  // namespace grainside::rules
