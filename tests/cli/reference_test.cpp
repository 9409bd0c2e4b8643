// grainside rules explain, rules reference, sources, and rules list by group and market.
#include <string>
#include <string_view>

#include "cli_test.h"
#include "schema_validation.h"

namespace grainside::tests {
namespace {

constexpr std::string_view kHostileRules =
    "- rule: hostile\n"
    "  title: \".so /etc/passwd \\\\*[x] <script>alert(1)</script>\"\n"
    "  group: \"a \\\"b\\\" <i>\"\n"
    "  grade: vague\n"
    "  when: {says: wool, kind: [material, species], part: [main, lining], unmarked: [title, imitation]}\n"
    "  unless_beside: {says: silk, reach: elsewhere, differs: yes, share: {to: 49.9}}\n"
    "  because: \"'quoted' \\e[31m & so on\"\n"
    "  sources: [seen-law]\n"
    "  proof:\n"
    "    flags: [{text: Wool., words: Wool}, {text: \"Soft <b> wool.\", words: wool}, {text: A wool., words: wool}]\n"
    "    passes: [{text: Wood., because: no wool}, {text: Stone.}, {text: Paper.}]\n"
    "- rule: hostile-us\n"
    "  like: hostile\n"
    "  grade: misleading\n"
    "  markets: us\n"
    "  in_force: {from: 2026-01-01, until: 2030-12-31}\n"
    "  unless: {says_only: wool, marked_all: [method, result]}\n"
    "  sources: [unseen-standard]\n";

class Reference : public CliTest {
protected:
    void SetUp() override {
        CliTest::SetUp();
        write_small_evidence("book");
        write_file("book/wording/hostile.yaml", kHostileRules);
    }
};

TEST_F(Reference, ExplainsARuleInSentences) {
    const ProcessResult result = run({"rules", "explain", "--rules", "book", "hostile-us"});
    EXPECT_EQ(result.status, 0) << result.err;
    const std::string::size_type end = result.out.find("This is not legal advice");
    ASSERT_NE(end, std::string::npos) << result.out;
    EXPECT_EQ(result.out.substr(0, end), R"(.so /etc/passwd \*[x] <script>alert(1)</script>

  rule     hostile-us
  group    a "b" <i>
  grade    misleading: the words give a wrong impression under a cited
           definition, or the listing disagrees with itself
  markets  us (United States)
  in force from 2026-01-01 until 2030-12-31

What it flags
  It flags a material or species claim that says wool or a kind of it, of the
  main part or lining, not in the listing's name and without a word of the class
  'imitation' before it.
  It is silent on a claim that says just wool, with a test method in its
  sentence and with a test result in its sentence.
  It is silent where there is also, in another field and on the same part,
  another claim of something else that says silk or a kind of it, with a share
  of at most 49.9 %.

Why
  'quoted' ?[31m & so on

Source
  - Standard of the tests [unseen-standard], from memory
    Names should be plain.

The same in other markets
  - hostile (its model)
    vague; all; always: Law of the tests, section 1

Flagged
    Wool.
    ^^^^
    Soft <b> wool.
             ^^^^
    A wool.
      ^^^^

Passed
    Wood.
    (no wool)
    Stone.
    Paper.

)");
    EXPECT_EQ(run({"rules", "explain", "--rules", "book", "hostil"}).err,
              "grainside: error: there is no rule 'hostil'\n  hint: did you mean `hostile`?\n");
}

TEST_F(Reference, ListsByGroupAndMarket) {
    EXPECT_EQ(run({"rules", "list", "--rules", "book", "--group", "rules", "--market", "EU"}).out,
              "plastic-named  rules  misleading  us,eu  A plastic is named\n");
    const ProcessResult wrong = run({"rules", "list", "--rules", "book", "--group", "rule"});
    EXPECT_EQ(wrong.status, 2);
    EXPECT_EQ(wrong.err, "grainside: error: there is no group of rules 'rule'\n  hint: did you mean `rules`?\n");
}

TEST_F(Reference, ShowsSources) {
    const ProcessResult one = run({"sources", "--rules", "book", "unseen-standard"});
    EXPECT_EQ(one.status, 0) << one.err;
    EXPECT_EQ(one.out, R"(unseen-standard
    Standard of the tests
    Names should be plain.
    from memory; 2 rules, 1 method

Rules
  - hostile-us (misleading; us): .so /etc/passwd \*[x] <script>alert(1)</script>
  - plastic-named (misleading; us, eu): A plastic is named

Methods
  - flame: A thread in the flame
)");
    const ProcessResult of_market = run({"sources", "--rules", "book", "--market", "eu"});
    EXPECT_EQ(count_of(of_market.out, "\n\n"), 1U) << of_market.out;  // two sources
    const ProcessResult wrong = run({"sources", "--rules", "book", "sen-law"});
    EXPECT_EQ(wrong.status, 2);
    EXPECT_NE(wrong.err.find("did you mean `seen-law`?"), std::string::npos) << wrong.err;
}

TEST_F(Reference, HasRecordsThatFitTheirSchemas) {
    const ProcessResult sources = run({"sources", "--rules", "book", "--format", "jsonl"});
    EXPECT_GE(lines_of(sources.out).size(), 3U);
    const ProcessResult fitting = validate_records({"source"}, sources.out, folder());
    EXPECT_EQ(fitting.status, 0) << fitting.out;
    EXPECT_EQ(validate_records({"source"}, R"({"source":"a"})", folder()).status, 1);
    std::string rules = run({"rules", "list", "--rules", "book", "--format", "jsonl"}).out;
    rules += run({"rules", "show", "--rules", "book", "--format", "jsonl", "hostile-us"}).out;
    EXPECT_NE(rules.find("\"condition\":[\"It flags "), std::string::npos);
    EXPECT_NE(rules.find("\"like\":\"hostile\""), std::string::npos);
    const ProcessResult rule = validate_records({"rule"}, rules, folder());
    EXPECT_EQ(rule.status, 0) << rule.out;
}

TEST_F(Reference, IsAPageOnWhichNothingIsMarkup) {
    const ProcessResult made = run({"rules", "reference", "--rules", "book", "--out", "rules.html"});
    EXPECT_EQ(made.status, 0) << made.err;
    EXPECT_EQ(made.out, "");
    const std::string page = read_file(folder() / "rules.html");
    EXPECT_EQ(page.find("<script"), std::string::npos);
    EXPECT_EQ(page.find('\x1B'), std::string::npos);
    for (const std::string_view wanted : {"id=\"rule-hostile-us\"", "<a href=\"#rule-hostile\">hostile</a>",
                                          "id=\"source-seen-law\"", "Soft &lt;b&gt; <mark class=\"vague\">wool</mark>.",
                                          "id=\"group-a_20_22b_22_20_3ci_3e\"", "2 rules of its own"}) {
        EXPECT_NE(page.find(wanted), std::string::npos) << wanted;
    }
    // The same book, the same bytes.
    EXPECT_EQ(run({"rules", "reference", "--rules", "book"}).out, page);
}

// groff_man(7): a line that begins with a dot or an apostrophe is a request, a backslash begins an escape.
TEST_F(Reference, IsAManualPageInWhichNothingIsARequest) {
    const ProcessResult made = run({"rules", "reference", "--form", "man", "--rules", "book"});
    EXPECT_EQ(made.status, 0) << made.err;
    EXPECT_NE(made.out.find("\n\\&.so /etc/passwd \\e*[x] <script>"), std::string::npos);
    EXPECT_EQ(made.out.find("\n.so"), std::string::npos);
    EXPECT_NE(made.out.find("\n\\(aqquoted\\(aq "), std::string::npos);
    EXPECT_NE(made.out.find(".SH \"A \\(dqB\\(dq <I>\"\n"), std::string::npos);
    for (const char c : made.out) EXPECT_TRUE(c == '\n' || (c >= ' ' && c <= '~')) << static_cast<int>(c);
}

}  // namespace
}  // namespace grainside::tests
