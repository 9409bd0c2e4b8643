// Where values stand, and which of them are empty, in quotes or over several lines.
#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "tree_dump.h"

namespace grainside::document {
namespace {

struct Row {
    std::string_view name, text, want;
};

constexpr Row kRows[] = {
    {"mapping", "a: 1\nb:  two words\n", "1:1 {}\n 1:4 a = \"1\"\n 2:5 b = \"two words\"\n"},
    {"nested", "a:\n  b:\n    c: x\n", "1:1 {}\n 2:3 a = {}\n  3:5 b = {}\n   3:8 c = \"x\"\n"},
    {"list", "- x\n-   y\n", "1:1 []\n 1:3 \"x\"\n 2:5 \"y\"\n"},
    {"list_below_a_key", "a:\n- x\n- y: z\n", "1:1 {}\n 2:1 a = []\n  2:3 \"x\"\n  3:3 {}\n   3:6 y = \"z\"\n"},
    {"brackets", "a: [x,  {b: y}]\n", "1:1 {}\n 1:4 a = []\n  1:5 \"x\"\n  1:9 {}\n   1:13 b = \"y\"\n"},
    {"pair_in_brackets", "[a: b]\n", "1:1 []\n 1:2 {}\n  1:5 a = \"b\"\n"},
    {"quotes", "- 'x'\n- \"y\"\n- z\n", "1:1 []\n 1:3 \"x\" quoted\n 2:3 \"y\" quoted\n 3:3 \"z\"\n"},
    {"empty_quotes_are_no_null", "a: ''\n", "1:1 {}\n 1:4 a = \"\" quoted\n"},
    {"quoted_null_is_text", "a: 'null'\n", "1:1 {}\n 1:4 a = \"null\" quoted\n"},
    {"written_nulls", "a: ~\nb: null\nc: NULL\n", "1:1 {}\n 1:4 a = null\n 2:4 b = null\n 3:4 c = null\n"},
    {"nullified_is_text", "a: nullified\n", "1:1 {}\n 1:4 a = \"nullified\"\n"},
    // Nothing has no place of its own; the parser marks whatever comes next.
    {"empty_value", "a:\n\n# c\nb: 1\n", "1:1 {}\n 1:1 a = null\n 4:4 b = \"1\"\n"},
    {"empty_value_before_a_key_like_null", "a:\nnullable: 1\n", "1:1 {}\n 1:1 a = null\n 2:11 nullable = \"1\"\n"},
    {"empty_last_value", "x:\n  a:\n", "1:1 {}\n 2:3 x = {}\n  2:3 a = null\n"},
    {"empty_in_braces", "{a: , b}\n", "1:1 {}\n 1:2 a = null\n 1:7 b = null\n"},
    {"empty_items", "-\n- # - c\n\n  # - d\n-\n", "1:1 []\n 1:1 null\n 2:1 null\n 5:1 null\n"},
    {"empty_items_further_in", "a:\n  - -\n    -\n  -\nb: 1\n",
     "1:1 {}\n 2:3 a = []\n  2:5 []\n   2:5 null\n   3:5 null\n  4:3 null\n 5:4 b = \"1\"\n"},
    {"empty_item_between_mappings", "- a:\n-\n- b: 1\n",
     "1:1 []\n 1:3 {}\n  1:3 a = null\n 2:1 null\n 3:3 {}\n  3:6 b = \"1\"\n"},
    {"literal_block", "a: |\n  one\n   two\n\n  three\nb: x\n",
     "1:1 {}\n 1:4 a = \"one\\n two\\n\\nthree\\n\"\n 6:4 b = \"x\"\n"},
    {"folded_block", "- >-\n  one\n  two\n- x\n", "1:1 []\n 1:3 \"one two\"\n 4:3 \"x\"\n"},
    {"block_without_last_line_end", "a: |\n  one", "1:1 {}\n 1:4 a = \"one\"\n"},
    {"plain_over_lines", "a: one\n  two\nb: x\n", "1:1 {}\n 1:4 a = \"one two\"\n 3:4 b = \"x\"\n"},
    {"quoted_over_lines", "a: \"one\n  two\"\n", "1:1 {}\n 1:4 a = \"one two\" quoted\n"},
    {"value_on_the_next_line", "a:\n  one\n", "1:1 {}\n 2:3 a = \"one\"\n"},
    {"columns_in_bytes", "\xC3\xA9: \xC3\xA9 x\nb: ['\xE9\x9D\xA9', y]\n",
     "1:1 {}\n 1:5 \xC3\xA9 = \"\xC3\xA9 x\"\n 2:4 b = []\n  2:5 \"\xE9\x9D\xA9\" quoted\n  2:12 \"y\"\n"},
    {"tab_before_a_value", "a:\t1\n", "1:1 {}\n 1:4 a = \"1\"\n"},
    {"comment_above", "# c\n\n  # d\na: 1 # e\nb: x#y\n", "4:1 {}\n 4:4 a = \"1\"\n 5:4 b = \"x#y\"\n"},
    {"document_start", "---\na: 1\n", "2:1 {}\n 2:4 a = \"1\"\n"},
    {"explicit_key", "? a\n: 1\n", "1:1 {}\n 2:3 a = \"1\"\n"},
    {"scalar_root", "text\n", "1:1 \"text\"\n"},
    {"numbers_stay_text", "[010, 0x10, 1e3, yes, no, true, 1996-10-03]\n",
     "1:1 []\n 1:2 \"010\"\n 1:7 \"0x10\"\n 1:13 \"1e3\"\n 1:18 \"yes\"\n 1:23 \"no\"\n 1:27 \"true\"\n 1:33 "
     "\"1996-10-03\"\n"},
};

class YamlPlaces : public testing::TestWithParam<Row> {};

TEST_P(YamlPlaces, AreExact) {
    EXPECT_EQ(dump_places(parse_good(GetParam().text).root()), GetParam().want);
}

// Line ends of the other kind change no place and no text: YAML 1.2 reads each kind as a line feed.
TEST_P(YamlPlaces, AreTheSameWithCarriageReturns) {
    std::string text;
    for (const char c : GetParam().text) text += c == '\n' ? "\r\n" : std::string(1, c);
    EXPECT_EQ(dump_places(parse_good(text).root()), GetParam().want);
}

TEST_P(YamlPlaces, AreTheSameBehindAByteOrderMark) {
    EXPECT_EQ(dump_places(parse_good("\xEF\xBB\xBF" + std::string(GetParam().text)).root()), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, YamlPlaces, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(YamlPlaces, FilesWithoutAValueHaveNoRoot) {
    for (const std::string_view text : {"", "\n", "\n\n  \n", "# only\n# comments\n", "# no line end", "\xEF\xBB\xBF",
                                        "\r\n# c\r\n", "%YAML 1.2\n"}) {
        const Document document = parse_good(text);
        EXPECT_FALSE(document.root().exists()) << testing::PrintToString(text);
        EXPECT_TRUE(document.records().empty());
    }
    EXPECT_EQ(dump(parse_good("---\n").root()), "null");
}

TEST(YamlPlaces, KeysAreStoredOnce) {
    EXPECT_EQ(parse_good("- {rule: a, when: b}\n- {rule: c, when: d}\n").strings().size(), 12u);
}

}  // namespace
}  // namespace grainside::document
