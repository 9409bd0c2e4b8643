#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "grainside/result.h"

namespace grainside {
namespace {

struct Row {
    std::string_view name;
    Issue issue;
    std::string_view want;
};

Issue at(std::uint32_t column, std::string excerpt) {
    return {.code = "c", .file = "f", .line = 1, .column = column, .message = "m", .hint = {}, .excerpt = excerpt};
}

const Row kRows[] = {
    {"whole",
     {Issue::Severity::error, "unknown-key", "a/b.yaml", 3, 5, "the key `x` is not known", "did you mean `y`?",
      "  - x: 1"},
     "a/b.yaml:3:5: error: the key `x` is not known [unknown-key]\n"
     "    - x: 1\n"
     "      ^\n"
     "  hint: did you mean `y`?\n"},
    {"warning", {Issue::Severity::warning, "c", "f", 1, 2, "m", "", ""}, "f:1:2: warning: m [c]\n"},
    {"note", {Issue::Severity::note, "c", "f", 1, 2, "m", "", ""}, "f:1:2: note: m [c]\n"},
    {"no_column", {Issue::Severity::error, "c", "f", 7, 0, "m", "", "text"}, "f:7: error: m [c]\n  text\n"},
    {"no_place", {Issue::Severity::error, "c", "f", 0, 0, "m", "", ""}, "f: error: m [c]\n"},
    {"no_file", {Issue::Severity::error, "c", "", 0, 0, "m", "", ""}, "error: m [c]\n"},
    {"no_code", {Issue::Severity::error, "", "f", 0, 0, "m", "", ""}, "f: error: m\n"},
    {"caret_at_first", at(1, "abc"), "f:1:1: error: m [c]\n  abc\n  ^\n"},
    {"caret_after_end", at(4, "abc"), "f:1:4: error: m [c]\n  abc\n     ^\n"},
    {"caret_far_after_end", at(4000000000u, "abc"), "f:1:4000000000: error: m [c]\n  abc\n     ^\n"},
    // A tab is shown as one space, so the caret is right whatever the terminal's tab stops are.
    {"caret_after_tab", at(3, "\t\tx"), "f:1:3: error: m [c]\n    x\n    ^\n"},
    {"caret_after_accent", at(6, "caf\xC3\xA9 x"), "f:1:6: error: m [c]\n  caf\xC3\xA9 x\n      ^\n"},
    {"caret_after_combining", at(4, "e\xCC\x81x"), "f:1:4: error: m [c]\n  e\xCC\x81x\n   ^\n"},
    {"caret_after_wide", at(4, "\xE9\x9D\xA9x"), "f:1:4: error: m [c]\n  \xE9\x9D\xA9x\n    ^\n"},
    {"caret_inside_char", at(3, "a\xC3\xA9z"), "f:1:3: error: m [c]\n  a\xC3\xA9z\n   ^\n"},
    {"escape_in_excerpt", at(2, "\x1B[31mred"), "f:1:2: error: m [c]\n  ?[31mred\n   ^\n"},
    {"newline_in_message",
     {Issue::Severity::error, "c", "f", 1, 0, "a\nb: error: forged", "h\r\nh", ""},
     "f:1: error: a b: error: forged [c]\n  hint: h  h\n"},
    {"control_in_names",
     {Issue::Severity::error, "c\x07", "f\x1B]0;x\x07", 1, 0, "m\x7F", "\xC2\x9Bm", ""},
     "f?]0;x?:1: error: m? [c?]\n  hint: ??m\n"},
};

class IssueText : public testing::TestWithParam<Row> {};

TEST_P(IssueText, Reads) {
    EXPECT_EQ(to_text(GetParam().issue), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, IssueText, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(IssueText, LongLineIsAWindowWithTheCaretUnderTheColumn) {
    Issue issue = at(1001, std::string(1000, 'a') + 'X' + std::string(1000, 'b'));
    const std::string text = to_text(issue);
    const std::size_t line = text.find('\n') + 1;
    const std::size_t caret_line = text.find('\n', line) + 1;
    EXPECT_LT(caret_line - line, 160u);
    EXPECT_EQ(text.find('X', line) - line, text.find('^', caret_line) - caret_line);
}

TEST(IssueText, EveryByteInEveryFieldIsInert) {
    for (int byte = 0; byte < 256; ++byte) {
        for (const std::string_view around : {"", "\xC2", "\xE2\x80"}) {
            const std::string text = std::string(around) + static_cast<char>(byte) + "x";
            const std::string shown = to_text({Issue::Severity::error, text, text, 1, 2, text, text, text});
            std::size_t lines = 0;
            for (const char c : shown) {
                lines += c == '\n' ? 1 : 0;
                EXPECT_TRUE(c == '\n' || (static_cast<unsigned char>(c) >= 0x20 && c != 0x7F)) << byte;
            }
            EXPECT_EQ(lines, 4u) << byte;
            EXPECT_EQ(shown.find("\xC2\x9B"), std::string::npos);
            EXPECT_EQ(shown.find("\xE2\x80\xAE"), std::string::npos);
        }
    }
}

}  // namespace
}  // namespace grainside
