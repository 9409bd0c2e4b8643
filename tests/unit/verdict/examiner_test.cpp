// Small books, each with one thing that an examination must tell, and its neighbour that it must not.
#include <gtest/gtest.h>

#include <algorithm>
#include <initializer_list>
#include <map>
#include <stdexcept>
#include <string>
#include <string_view>

#include "support/small_rules.h"
#include "verdict/examination/examiner.h"

namespace grainside {
namespace {

constexpr std::string_view kWords = R"(
- {says: polyurethane, words: [polyurethane]}
- {says: cotton, words: [cotton]}
- {says: silk, words: [silk]}
- {says: waterproof, words: [waterproof]}
- {part: lining, nouns: [lining]}
- {category: bag, nouns: [bag, tote]}
- {category: belt, nouns: [belt]}
- {grammar: article, words: [a, an]}
- {grammar: determiner, words: [the, this]}
)";

constexpr std::string_view kPasses = "    passes: [{text: Wood.}, {text: Stone.}, {text: Paper.}]\n";

// `texts` says what the rule flags: "Cotton".
std::string rule(std::string_view id, std::string_view grade, std::string_view condition, std::string_view flagged) {
    const std::string word(flagged);
    return "- rule: " + std::string(id) + "\n  title: T " + std::string(id) + "\n  grade: " + std::string(grade) +
           "\n  because: B " + std::string(id) + "\n  sources: law\n  " + std::string(condition) +
           "\n  proof:\n    flags: [{text: " + word + ", words: " + word + "}, {text: One two " + word +
           ", words: " + word + "}, {text: Three four five " + word + ", words: " + word + "}]\n" +
           std::string(kPasses);
}

RuleBook load(std::map<std::string, std::string> files) {
    files.emplace("sources.yaml",
                  "- {source: law, cite: A law, says: It says., how: seen}\n"
                  "- {source: lore, cite: Lore, says: It is said., how: memory}\n");
    files.emplace("markets.yaml", "- {market: us}\n- {market: eu}\n- {market: it, within: eu}\n");
    files.emplace("vocabulary/en/words.yaml", kWords);
    const support::RuleFolder folder(files);
    Result<RuleBook> book = RuleBook::load(folder.path());
    if (!book) throw std::runtime_error(to_text(book.issues().front()));
    return std::move(book).value();
}

// "severity code rule other line", one a line. What the words and sources of every small book give is left out.
std::string dump(const ExaminationReport& report) {
    std::string text;
    for (const BookRemark& remark : report.remarks) {
        if (remark.issue.file == "sources.yaml" || remark.issue.file == "concepts.yaml") continue;
        EXPECT_NE(remark.issue.line, 0U);
        EXPECT_FALSE(remark.issue.message.empty());
        EXPECT_FALSE(remark.issue.hint.empty());
        text += remark.issue.severity == Issue::Severity::error ? "error " : "note ";
        text += remark.issue.code + ' ' + remark.rule + (remark.other.empty() ? "" : ' ' + remark.other) + ' ' +
                remark.issue.file + ':' + std::to_string(remark.issue.line) + '\n';
    }
    return text;
}

std::string examined(std::map<std::string, std::string> files) {
    return dump(Examiner(load(std::move(files))).report());
}

struct ConditionRow {
    std::string_view name, condition, want;
};
constexpr ConditionRow kConditions[] = {
    {"sound", "when: {says: cotton}", ""},
    {"one_of_two", "when: [{says: cotton}, {says: silk, not_says: silk}]", "error dead-condition\n"},
    {"not_says", "when: {says: silk, not_says: silk}", "error dead-rule\n"},
    {"no_words", "when: {says: mohair}", "error dead-rule\n"},
    {"kind", "when: {says: cotton, kind: performance}", "error dead-rule\n"},
    {"kind_of_a_share", "when: {says: cotton, kind: [material, composition]}", ""},
    {"part", "when: {says: cotton, part: lining, not_part: lining}", "error dead-rule\n"},
    {"category", "when: {says: cotton, category: belt, not_category: belt}", "error dead-rule\n"},
    {"marks", "when: {says: cotton, marked: [pure, all], unmarked: [pure, all]}", "error dead-rule\n"},
    {"one_mark_left", "when: [{says: cotton, marked: [pure, all], unmarked: pure}, {says: cotton}]", ""},
    {"all_marks", "when: {says: cotton, marked_all: [pure, all], unmarked: pure}", "error dead-rule\n"},
    {"called", "when: {says: cotton, called: leather, not_called: leather}", "error dead-rule\n"},
    {"borrowed", "when: {says: cotton, called: leather, borrowed: no}", "error dead-rule\n"},
    {"beside", "when: {says: cotton}\n  beside: {says: silk, not_says: silk}", "error dead-rule\n"},
    {"unless", "when: {says: cotton}\n  unless: {says: silk, not_says: silk}", "error dead-condition\n"},
};

// "severity code" of the remarks on rule `id` whose codes begin with one of `codes`.
std::string codes_of(const ExaminationReport& report, std::string_view id,
                     std::initializer_list<std::string_view> codes) {
    std::string text;
    for (const BookRemark& remark : report.remarks) {
        const bool asked = std::any_of(codes.begin(), codes.end(),
                                       [&](std::string_view code) { return remark.issue.code.starts_with(code); });
        if (remark.rule != id || !asked || !remark.other.empty()) continue;
        text += remark.issue.severity == Issue::Severity::error ? "error " : "note ";
        text += remark.issue.code + '\n';
    }
    return text;
}

TEST(Examiner, FindsConditionsThatCanHoldForNothing) {
    // A rule a row: what they do to one another is not asked here.
    std::string rules;
    for (const ConditionRow& row : kConditions) rules += rule(row.name, "vague", row.condition, "cotton");
    const RuleBook book = load({{"wording/a.yaml", rules}});
    const ExaminationReport report = Examiner(book).report();
    for (const ConditionRow& row : kConditions) {
        EXPECT_EQ(codes_of(report, row.name, {"dead-"}), row.want) << row.name;
    }
}

TEST(Examiner, FindsRulesThatNeverSpeak) {
    EXPECT_EQ(examined({{"wording/a.yaml", rule("r", "vague", "when: {says: cotton, negated: yes}", "cotton")}}),
              "error silent-rule r wording/a.yaml:1\n");
}

struct ShadowRow {
    std::string_view name;
    std::map<std::string, std::string> files;
    std::string_view want;
};

TEST(Examiner, FindsRulesInWhosePlaceAnotherOneSpeaks) {
    const std::string cotton = "when: {says: cotton}";
    const std::string textile = "when: {says: textile}";
    const std::string eu = "in_force: {from: 2020-01-01}\n  group: a\n  ";
    const auto twin = [](std::string_view id, std::string_view grade) {
        return "- rule: " + std::string(id) + "\n  like: r\n  grade: " + std::string(grade) +
               "\n  in_force: {from: 2020-01-01}\n  sources: law\n";
    };
    const ShadowRow rows[] = {
        {"same_grade_and_first",
         {{"wording/a.yaml", rule("s", "vague", textile, "silk") + rule("r", "vague", cotton, "soft cotton")}},
         "error shadowed-rule r s wording/a.yaml:10\n"},
        {"worse_grade",
         {{"wording/a.yaml", rule("r", "vague", cotton, "soft cotton") + rule("s", "misleading", textile, "silk")}},
         "error shadowed-rule r s wording/a.yaml:1\n"},
        {"only_on_some_words",
         {{"wording/a.yaml", rule("r", "vague", textile, "silk") + rule("s", "misleading", cotton, "pure cotton")}},
         ""},
        // The law of the larger market still speaks elsewhere.
        {"stricter_in_a_market",
         {{"wording/a.yaml", rule("r", "vague", cotton, "soft cotton")},
          {"markets/us.yaml", rule("s", "misleading", eu + textile, "silk")}},
         "note overruled-rule r s wording/a.yaml:1\n"},
        {"market_rule_behind_a_general_one",
         {{"wording/a.yaml", rule("s", "misleading", textile, "silk")},
          {"markets/us.yaml", rule("r", "vague", eu + cotton, "soft cotton")}},
         "error shadowed-rule r s markets/us.yaml:1\n"},
        {"twin",
         {{"wording/a.yaml", rule("r", "vague", cotton, "cotton")}, {"markets/us.yaml", twin("t", "vague")}},
         ""},
        {"worse_twin",
         {{"wording/a.yaml", rule("r", "vague", cotton, "cotton")}, {"markets/us.yaml", twin("t", "misleading")}},
         ""},
        {"twin_that_its_model_hides",
         {{"wording/a.yaml", rule("r", "misleading", cotton, "cotton")}, {"markets/us.yaml", twin("t", "vague")}},
         "error shadowed-rule t r markets/us.yaml:1\n"},
        {"twin_of_a_union_behind_that_of_a_country",
         {{"wording/a.yaml", rule("r", "vague", cotton, "cotton")},
          {"markets/eu.yaml", twin("t", "vague")},
          {"markets/it.yaml", twin("u", "vague")}},
         "note overruled-rule t u markets/eu.yaml:1\n"},
        // Before the other one came into force it spoke, and never will again.
        {"from_a_day_on",
         {{"markets/us.yaml",
           rule("r", "vague", "in_force: {from: 2010-01-01}\n  group: a\n  " + cotton, "soft cotton") +
               rule("s", "misleading", eu + textile, "silk")}},
         "error shadowed-rule r s markets/us.yaml:1\n"},
        {"until_a_day",
         {{"markets/us.yaml",
           rule("r", "vague", "in_force: {from: 2010-01-01}\n  group: a\n  " + cotton, "soft cotton") +
               rule("s", "misleading", "in_force: {from: 2000-01-01, until: 2025-12-31}\n  group: a\n  " + textile,
                    "silk")}},
         ""},
    };
    for (const ShadowRow& row : rows) {
        SCOPED_TRACE(row.name);
        EXPECT_EQ(examined(row.files), row.want);
    }
}

TEST(Examiner, AsksFurtherListings) {
    const RuleBook book =
        load({{"wording/a.yaml", rule("r", "vague", "when: {says: cotton, part: lining}", "cotton")}});
    Examiner examiner(book);
    EXPECT_EQ(dump(examiner.report()), "error silent-rule r wording/a.yaml:1\n");
    Listing listing;
    listing.fields.push_back({"description", "Cotton lining"});
    examiner.add(listing);
    const ExaminationReport report = examiner.report();
    EXPECT_EQ(dump(report), "");
    EXPECT_EQ(report.texts, 7U);
}

constexpr std::string_view kOtherPasses = "{text: Wood.}, {text: Stone.}, {text: Ore.}";

std::string with_flags(std::string_view flags, std::string_view passes = kOtherPasses, std::string_view id = "r") {
    return "- rule: " + std::string(id) +
           "\n  title: T\n  grade: vague\n  when: {says: cotton}\n  because: B\n  sources: law\n  proof:\n    flags: "
           "[" +
           std::string(flags) + "]\n    passes: [" + std::string(passes) + "]\n";
}

struct ExampleRow {
    std::string_view name, flags, want;
};
constexpr ExampleRow kExamples[] = {
    {"another_product",
     "{text: A cotton bag, words: cotton}, {text: This cotton belt, words: cotton}, {text: Of cotton, words: cotton}",
     "error example-twice\n"},
    {"another_order",
     "{text: Soft fine cotton, words: cotton}, {text: Fine soft cotton, words: cotton}, {text: Cotton, words: Cotton}",
     "note examples-alike\n"},
    {"one_word_more",
     "{text: Of soft cotton, words: cotton}, {text: Of very soft cotton, words: cotton}, {text: Cotton, words: Cotton}",
     "note examples-alike\n"},
    {"one_word_exchanged",
     "{text: Of soft cotton, words: cotton}, {text: Of fine cotton, words: cotton}, {text: Cotton, words: Cotton}",
     "note examples-alike\n"},
    {"two_words_exchanged",
     "{text: Of soft cotton, words: cotton}, {text: With fine cotton, words: cotton}, {text: Cotton, words: Cotton}",
     ""},
    {"one_word_shared",
     "{text: Of cotton, words: cotton}, {text: Soft cotton, words: cotton}, {text: Fine cotton, words: cotton}", ""},
    {"another_field",
     "{text: Soft fine cotton, words: cotton}, {title: Soft fine cotton, words: cotton}, {text: Of cotton, words: "
     "cotton}",
     ""},
};

TEST(Examiner, FindsExamplesTooAlike) {
    std::string rules;
    for (const ExampleRow& row : kExamples) rules += with_flags(row.flags, kOtherPasses, row.name);
    rules += with_flags(
        "{text: Cotton, words: Cotton}, {text: Of cotton, words: cotton}, {text: In fine cotton, words: "
        "cotton}",
        "{text: A wood belt}, {text: The wood tote}, {text: Stone}", "passes");
    const RuleBook book = load({{"wording/a.yaml", rules}});
    const ExaminationReport report = Examiner(book).report();
    for (const ExampleRow& row : kExamples) {
        EXPECT_EQ(codes_of(report, row.name, {"example"}), row.want) << row.name;
    }
    EXPECT_EQ(codes_of(report, "passes", {"example"}), "error example-twice\n");
}

TEST(Examiner, FindsTextsThatTwoRulesClaim) {
    const std::string both =
        rule("r", "vague", "when: {says: cotton}", "cotton") + rule("s", "vague", "when: {says: silk}", "cotton");
    EXPECT_NE(examined({{"wording/a.yaml", both}}).find("error example-twice s r wording/a.yaml:17\n"),
              std::string::npos);
    // In two markets the same text may well be flagged by each.
    const std::string in = "in_force: {from: 2020-01-01}\n  group: a\n  when: {says: cotton}";
    EXPECT_EQ(examined({{"markets/us.yaml", rule("r", "vague", in, "cotton")},
                        {"markets/eu.yaml", rule("s", "vague", in, "cotton")}}),
              "");
}

TEST(Examiner, NotesWhatIsUnusual) {
    EXPECT_EQ(examined({{"markets/us.yaml", rule("r", "vague", "group: a\n  when: {says: cotton}", "cotton")}}),
              "note no-date r markets/us.yaml:1\n");
    std::string from_memory =
        rule("r", "vague", "in_force: {from: 2020-01-01}\n  group: a\n  when: {says: cotton}", "cotton");
    from_memory.replace(from_memory.find("sources: law"), 12, "sources: lore");
    EXPECT_EQ(examined({{"markets/us.yaml", from_memory}}), "note from-memory r markets/us.yaml:1\n");
    std::string same = rule("s", "vague", "when: {says: silk}", "silk");
    same.replace(same.find("T s"), 3, "T r");
    same.replace(same.find("B s"), 3, "B r");
    EXPECT_EQ(examined({{"wording/a.yaml", rule("r", "vague", "when: {says: cotton}", "cotton") + same}}),
              "note same-because s r wording/a.yaml:10\nnote same-title s r wording/a.yaml:10\n");
}

TEST(Examiner, NotesWhatNothingAsksFor) {
    const RuleBook book = load({{"wording/a.yaml", rule("r", "vague", "when: {says: textile}", "cotton")}});
    std::string told;
    for (const BookRemark& remark : Examiner(book).report().remarks) told += remark.issue.message + '\n';
    EXPECT_NE(told.find("nothing in the book cites source 'lore'"), std::string::npos) << told;
    EXPECT_NE(told.find("no rule speaks of or asks about: waterproof"), std::string::npos) << told;
    EXPECT_EQ(told.find("cotton"), std::string::npos) << told;
    EXPECT_EQ(told.find("'law'"), std::string::npos) << told;
}

TEST(Examiner, TellsOfOneRuleAlone) {
    const std::string hidden = rule("r", "vague", "when: {says: cotton}", "soft cotton");
    const std::string winner = rule("s", "misleading", "when: {says: textile}", "silk");
    const std::string apart = rule("u", "vague", "when: {says: waterproof, negated: yes}", "waterproof");
    const RuleBook book = load({{"wording/a.yaml", hidden + winner + apart}});
    Examiner examiner(book);
    for (const char* rule : {"r", "s"}) {
        EXPECT_EQ(dump(examiner.report(rule)), "error shadowed-rule r s wording/a.yaml:1\n") << rule;
    }
    EXPECT_EQ(dump(examiner.report("u")), "error silent-rule u wording/a.yaml:19\n");
}

// "clause: never ...", one a line.
std::string gaps(const CoverageReport& report) {
    std::string text;
    for (const ClauseCoverage& clause : report.clauses) {
        if (!clause.seen_true) text += clause.owner + ' ' + clause.clause + ": never true\n";
        if (!clause.seen_false) text += clause.owner + ' ' + clause.clause + ": never false\n";
    }
    return text;
}

TEST(Examiner, CoversEachKeyAndClause) {
    const auto of = [](std::string_view condition, std::string_view flags) {
        std::string text = with_flags(flags);
        text.replace(text.find("when: {says: cotton}"), 20, condition);
        return gaps(Examiner(load({{"wording/a.yaml", text}})).coverage());
    };
    constexpr std::string_view kCotton =
        "{text: Cotton, words: Cotton}, {text: Silk lining, words: Silk}, {text: Cotton lining, words: Cotton}";
    EXPECT_EQ(of("when: {says: cotton}", kCotton), "");
    EXPECT_EQ(of("when: {says: cotton, part: lining}", kCotton), "");
    EXPECT_EQ(of("when: {says: silk, part: lining}", kCotton), "r when part: never false\n");
    EXPECT_EQ(of("when: {says: cotton, not_part: main}", kCotton), "");
    EXPECT_EQ(of("when: {says: cotton}\n  unless: {says: cotton, part: strap}", kCotton),
              "r unless part: never true\nr unless: never true\n");
    EXPECT_EQ(of("when: [{says: cotton}, {says: waterproof}]", kCotton), "r when[2] says: never true\n");
    // No claim that something is waterproof is of another kind.
    EXPECT_EQ(of("when: {says: waterproof, kind: performance}",
                 "{text: Waterproof, words: Waterproof}, {text: Cotton, words: Cotton}, {text: Silk, words: Silk}"),
              "");
    // A share makes a material one of a composition.
    EXPECT_EQ(of("when: {says: cotton, kind: material}", kCotton), "r when kind: never false\n");
    EXPECT_EQ(of("when: {says: cotton}\n  beside: {says: silk, reach: anywhere}", kCotton), "r beside: never true\n");
}

TEST(Examiner, CoversWhatIsSharedOnce) {
    const std::string model = rule("r", "vague", "when: {says: cotton, part: lining}", "cotton silk");
    const std::string twin =
        "- rule: t\n  like: r\n  in_force: {from: 2020-01-01}\n  sources: law\n  unless: {says: silk, part: strap}\n";
    const RuleBook book = load({{"wording/a.yaml", model}, {"markets/us.yaml", twin}});
    const CoverageReport report = Examiner(book).coverage();
    EXPECT_EQ(gaps(report),
              "t unless part: never true\nt unless: never true\nt unless: never false\nr when part: never true\n");
    EXPECT_EQ(report.texts, 6U) << "the texts of a model are not read twice";
    EXPECT_EQ(report.gaps, 4U);
}

}  // namespace
}  // namespace grainside
