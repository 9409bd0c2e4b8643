// Every fault that a YAML file can have, each with its exact place.
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "document/faults.h"
#include "document/yaml_document.h"
#include "tree_dump.h"

namespace grainside::document {
namespace {

struct Row {
    std::string_view name, text, want;  // want: "line:column code", one a fault
};

constexpr Row kRows[] = {
    // yaml-syntax
    {"colon_in_plain_text", "a: b: c\n", "1:5 yaml-syntax"},
    {"deeper_than_its_neighbour", "a: 1\n  b: 2\n", "2:4 yaml-syntax"},
    {"key_without_colon", "a: 1\nb\nc: 2\n", "3:2 yaml-syntax"},
    {"bracket_not_closed", "a: [1, 2\n", "1:4 yaml-syntax"},
    {"bracket_not_closed_at_the_very_end", "b: 1\na: [1, 2", "2:4 yaml-syntax"},
    {"brace_not_closed", "a: 1\nb: {c: d\n", "2:4 yaml-syntax"},
    {"bracket_not_closed_before_a_key", "a: [1, 2\nb: 3\n", "2:2 yaml-syntax"},
    {"bracket_never_opened", "a: ]\n", "1:4 yaml-syntax"},
    {"single_quote_not_closed", "a: 'x\nb: y\n", "1:4 yaml-syntax"},
    {"double_quote_not_closed", "a: 1\n\"b: y\n", "2:1 yaml-syntax"},
    {"escaped_quote_does_not_close", "a: \"x\\\"\n", "1:4 yaml-syntax"},
    {"doubled_quote_does_not_close", "a: 'x''\n", "1:4 yaml-syntax"},
    {"unknown_escape", "a: \"\\c\"\n", "1:5 yaml-syntax"},
    {"unknown_escape_further_on", "a: 1\nb: \"xy\\czz\"\n", "2:7 yaml-syntax"},
    {"unknown_escape_of_a_long_character", "a: \"\\\xC3\xA9\"\n", "1:5 yaml-syntax"},
    {"bad_hexadecimal_escape", "a: \"\\x4g\"\n", "1:5 yaml-syntax"},
    {"latin_next_line_escape", "a: \"x\\Ny\"\n", "1:4 yaml-syntax"},
    {"latin_no_break_space_escape", "a: \"x\\_y\"\n", "1:4 yaml-syntax"},
    {"written_out_escape", "a: \"x\\u0085y\\u00a0z\"\n", ""},
    {"surrogate_escape", "a: \"\\uD800\"\n", "1:5 yaml-syntax"},
    {"text_after_a_quote", "a: \"x\" y\n", "1:8 yaml-syntax"},
    {"text_after_the_root", "[a] b\n", "1:5 yaml-syntax"},
    {"list_then_mapping", "- a\nb: c\n", "2:1 yaml-syntax"},
    {"tab_as_indentation", "a:\n\tb: 1\n", "2:3 yaml-syntax"},
    {"reserved_sign", "a: @x\n", "1:4 yaml-syntax"},
    {"after_document_end", "a: 1\n...\nb: 2\n", "3:1 yaml-syntax"},
    {"lone_carriage_return", "a: 1\rb: 2\n", "1:5 yaml-syntax"},
    {"carriage_return_at_the_end", "a: 1\r", "1:5 yaml-syntax"},
    {"delete_character", "a: \x7F\n", "1:4 yaml-syntax"},
    {"c1_control", "a: \xC2\x9B\n", "1:4 yaml-syntax"},
    // The parser takes this one for the end of its input.
    {"end_of_transmission", "a: 1\nb: x\x04\nc: [\n", "2:5 yaml-syntax"},
    {"escape_characters_line_by_line", "a: \x1B[1m\x1B[0m\nb: 1\nc: \x08\n", "1:4 yaml-syntax; 3:4 yaml-syntax"},
    // not-utf8
    {"latin_1", "name: caf\xE9\n", "1:10 not-utf8"},
    {"utf_16",
     "\xFF\xFE"
     "a",
     "1:1 not-utf8"},
    {"overlong", "a: \xC0\xAF\n", "1:4 not-utf8"},
    {"surrogate", "a: \xED\xA0\x80\n", "1:4 not-utf8"},
    {"cut_at_the_end", "a: \xE9\x9D", "1:4 not-utf8"},
    // duplicate-key
    {"duplicate", "a: 1\nb: 2\na: 3\n", "3:1 duplicate-key"},
    {"duplicate_in_other_quotes", "a: 1\n'a': 2\n\"a\": 3\n", "2:1 duplicate-key; 3:1 duplicate-key"},
    {"duplicate_in_braces", "x: {a: 1, b: 2, a: 3}\n", "1:17 duplicate-key"},
    {"duplicate_in_a_list_member", "- a: 1\n  a: 2\n", "2:3 duplicate-key"},
    {"same_key_in_two_mappings", "- {a: 1}\n- {a: 2}\n", ""},
    {"same_key_further_in", "a: {a: {a: 1}}\n", ""},
    // alias
    {"anchor", "a: &x 1\n", "1:4 alias"},
    {"alias", "a: &x 1\nb: *x\nc: *x\n", "1:4 alias; 2:4 alias; 3:4 alias"},
    {"alias_of_nothing", "a: *x\n", "1:4 alias"},
    {"alias_as_a_key", "a: &x k\n*x : 1\n*x : 2\n", "1:4 alias; 2:1 alias; 3:1 alias"},
    {"anchor_of_a_mapping", "a: &x\n  b: 1\n", "1:4 alias"},
    {"merge_key", "a: &x {b: 1}\nc:\n  <<: *x\n", "1:4 alias; 3:7 alias"},
    // tag
    {"tag", "a: !t 1\n", "1:4 tag"},
    {"tag_of_yaml", "a: !!str 1\n", "1:4 tag"},
    {"tag_that_says_nothing", "a: ! 1\n", "1:4 tag"},
    {"tag_in_full", "a: !<tag:example.org,2000:x> 1\n", "1:4 tag"},
    {"tag_of_a_list", "a: !!set\n  - 1\n", "1:4 tag"},
    {"tag_of_a_mapping", "!!omap\na: 1\n", "1:1 tag"},
    {"tag_of_nothing", "a: !!null\n", "1:4 tag"},
    {"tag_behind_an_anchor", "a: &x !t 1\n", "1:4 alias; 1:4 tag"},
    {"sign_in_quotes", "a: '!t *x &y'\n", ""},
    // wrong-type: keys
    {"list_as_a_key", "? [a, b]\n: 1\nc: 2\n", "1:3 wrong-type"},
    {"mapping_as_a_key", "? {a: {b: c}}\n: 1\n", "1:3 wrong-type"},
    {"braces_as_a_key_by_mistake", "say: {{made_of}}\n", "1:7 wrong-type"},
    {"null_as_a_key", "~: 1\n", "1:1 wrong-type"},
    {"no_key", "a: 1\n: 2\n", "2:1 wrong-type"},
    {"empty_key", "\"\": 1\n", "1:1 wrong-type"},
    // many-documents
    {"two_documents", "a: 1\n---\nb: 2\n", "2:1 many-documents"},
    {"a_second_empty_one", "---\na: 1\n---\n", "3:1 many-documents"},
    {"document_marks_around_one", "---\na: 1\n...\n", ""},
};

class YamlFaults : public testing::TestWithParam<Row> {};

TEST_P(YamlFaults, AreToldWithTheirPlace) {
    EXPECT_EQ(faults_of(GetParam().text), GetParam().want);
}

// A comment above moves every place down by a line and changes nothing else.
TEST_P(YamlFaults, BelowACommentTheSameOneLineDown) {
    Faults faults;
    EXPECT_EQ(parse_yaml("test.yaml", "# comment\n" + std::string(GetParam().text), faults).has_value(),
              GetParam().want.empty());
    std::vector<Issue> issues = faults.take();
    for (Issue& issue : issues) --issue.line;
    EXPECT_EQ(dump(issues), GetParam().want);
}

TEST_P(YamlFaults, BehindAByteOrderMarkTheSame) {
    EXPECT_EQ(faults_of("\xEF\xBB\xBF" + std::string(GetParam().text)), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, YamlFaults, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(YamlFaults, NulByte) {
    EXPECT_EQ(faults_of(std::string_view("a: \0\n", 5)), "1:4 yaml-syntax");
    EXPECT_EQ(faults_of(std::string_view("\0\0\0a", 4)), "1:1 yaml-syntax");
}

TEST(YamlFaults, AtTheStartOfTheFile) {
    EXPECT_EQ(faults_of("%YAML 2.0\n---\na: 1\n"), "1:1 yaml-syntax");
    EXPECT_EQ(faults_of("\xFF\xFE"
                        "a"),
              "1:1 not-utf8");
}

TEST(YamlFaults, ManyInOneFileAreToldAtOnce) {
    EXPECT_EQ(faults_of("a: 1\n"
                        "b: !t 2\n"
                        "a: 3\n"
                        "c: {d: 1, d: 2, e: &x y}\n"
                        "? [k]\n"
                        ": v\n"
                        "f: *x\n"
                        "g: [1\n"),
              "2:4 tag; 4:11 duplicate-key; 4:20 alias; 5:3 wrong-type; 7:4 alias; 8:4 yaml-syntax");
}

TEST(YamlFaults, ReadAsPeopleNeedThem) {
    Faults faults;
    EXPECT_FALSE(parse_yaml("rules/a.yaml", "rule: a\nlined:\n  caf\xC3\xA9: 1\n  caf\xC3\xA9: 2\n", faults));
    const std::vector<Issue> issues = faults.take();
    ASSERT_EQ(issues.size(), 1u);
    EXPECT_EQ(to_text(issues[0]),
              "rules/a.yaml:4:3: error: the key `caf\xC3\xA9` stands twice in one mapping [duplicate-key]\n"
              "    caf\xC3\xA9: 2\n"
              "    ^\n"
              "  hint: it stands first in line 3; keep one of them\n");
}

TEST(YamlFaults, CountColumnsInBytesAndPointAtCharacters) {
    Faults faults;
    EXPECT_FALSE(parse_yaml("a.yaml", "\xC3\xA9\xC3\xA9: !t x\n", faults));
    const std::vector<Issue> issues = faults.take();
    ASSERT_EQ(dump(issues), "1:7 tag");
    EXPECT_NE(to_text(issues[0]).find("\n  \xC3\xA9\xC3\xA9: !t x\n      ^\n"), std::string::npos);
}

struct HintRow {
    std::string_view name, text, hint;
};

constexpr HintRow kHints[] = {
    {"colon", "a: b: c\n", "put text that holds `: ` in quotes, or mend the indentation"},
    {"tab", "a:\n\tb: 1\n", "indent with spaces, not with tabs"},
    {"sign", "a: `x`\n", "put text that begins with a sign in quotes"},
    {"end_in_quotes", "a: 'x", "a quote is opened and never closed"},
    {"escape", "a: \"C:\\data\"\n", "double the backslash, or use single quotes"},
    {"list_in_a_line", "a: - b\n", "begin the list on a line of its own"},
    {"latin_1", "a: \xE9\n", "save the file as UTF-8"},
    {"control", "a: \x07\n", "remove it"},
    {"carriage_return", "a: 1\rb: 2\n", "end lines with a line feed, or with both"},
    {"duplicate", "a: 1\na: 2\n", "it stands first in line 1; keep one of them"},
};

class YamlHints : public testing::TestWithParam<HintRow> {};

TEST_P(YamlHints, SayWhatToDo) {
    Faults faults;
    EXPECT_FALSE(parse_yaml("a.yaml", std::string(GetParam().text), faults));
    const std::vector<Issue> issues = faults.take();
    ASSERT_EQ(issues.size(), 1u);
    EXPECT_EQ(issues[0].hint, GetParam().hint);
    EXPECT_FALSE(issues[0].message.empty());
    EXPECT_FALSE(issues[0].message.ends_with('.'));
}

INSTANTIATE_TEST_SUITE_P(Rows, YamlHints, testing::ValuesIn(kHints),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace grainside::document
