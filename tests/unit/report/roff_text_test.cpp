#include "report/roff_text.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace grainside::report {
namespace {

struct Row {
    std::string_view name, text, want;
};

// Requests and escapes: groff(7); names of characters: groff_char(7); both from memory.
constexpr Row kLines[] = {
    {"plain", "Full grain.", "Full grain.\n"},
    {"nothing", "", ""},
    {"only_spaces", " \n ", ""},
    {"request", ".SH x", "\\&.SH x\n"},
    {"request_behind_spaces", "  .SH x", "\\&.SH x\n"},
    {"request_behind_a_line_end", "\n.SH x", "\\&.SH x\n"},
    {"request_in_the_text", "a\n.SH x", "a .SH x\n"},
    // Found by fuzz_book: what becomes a space only in print began a line, and broke the paragraph.
    {"request_behind_a_tab", "\t.SH x", "\\&.SH x\n"},
    {"request_behind_a_carriage_return", "\r.SH x", "\\&.SH x\n"},
    {"only_a_tab", "\t", ""},
    {"request_with_the_other_mark", "'ds x", "\\(aqds x\n"},
    {"escape", "\\fB", "\\efB\n"},
    {"hyphen", "full-grain", "full\\-grain\n"},
    {"beyond_ascii", "cuir v\xC3\xA9ritable", "cuir v\\[u00E9]ritable\n"},
    {"escape_of_a_terminal", "\x1b[1m", "\\[uFFFD][1m\n"},
};

class RoffLine : public testing::TestWithParam<Row> {};

TEST_P(RoffLine, IsTextOnly) {
    std::string out;
    append_roff_line(out, GetParam().text);
    EXPECT_EQ(out, GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, RoffLine, testing::ValuesIn(kLines),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(RoffArgument, HoldsNoQuote) {
    std::string out;
    append_roff_argument(out, "a \"b\"\n.c");
    EXPECT_EQ(out, "\"a \\(dqb\\(dq .c\"");
}

}  // namespace
}  // namespace grainside::report
