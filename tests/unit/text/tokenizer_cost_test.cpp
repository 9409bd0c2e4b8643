// Hostile texts that would take quadratic time in a tokenizer that searches without remembering. Each is several
// megabytes: were one of them quadratic, the test would run for hours instead of a blink, and the token counts hold
// that no text is passed over to get there.
#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "text/tokenizer.h"

namespace grainside::text {
namespace {

struct Row {
    std::string_view name;
    std::string_view unit;  // repeated
    std::string_view end;   // once, at the end
    std::size_t each;       // tokens a unit
    std::size_t more;       // tokens of the rest
};

constexpr std::size_t kUnits = 500000;

constexpr Row kRows[] = {
    {"less_than", "<", "", 0, 0},
    {"less_than_and_letter", "<a ", "", 1, 0},
    {"open_attributes", "<a =\"", "", 2, 0},
    {"quoted_pairs_and_a_quoted_end", "<a =\"\" ", "=\">\"", 3, 2},
    {"quotes_that_hide_the_next_tag", "<b\" =\"", "\"=\">\"", 3, 3},
    {"ampersands", "&", "", 1, 0},
    {"references_never_closed", "&eacute", "", 2, 0},
    {"numeric_references_never_closed", "&#1", "", 2, 0},
    {"comments_never_closed", "<!-- ", "", 2, 0},
    {"scripts_never_closed", "<script>", "x", 0, 1},
    {"scripts_with_other_ends", "<script></style ", "x", 2, 1},
    {"declarations_never_closed", "<!x", "", 2, 0},
    {"dots", ".", "", 0, 1},
    {"hyphens", "-", "x", 0, 1},
    {"soft_hyphens_in_a_word", "a\u00AD", "", 0, 1},
    {"soft_hyphens_after_marks", "a-\u00AD\u00AD\u00AD", "a", 1, 1},
    {"apostrophes", "a'", "", 0, 1},
    {"look_alikes", "a\u0430 ", "", 1, 0},
    {"one_look_alike_word", "a\u0430", "", 0, 1},
    {"line_ends", "\n", "x", 0, 1},
    {"numbers", "1.", "1", 0, 1},
    {"continuation_bytes", "\x80", "", 0, 0},
    {"lead_bytes", "\xF0", "", 0, 0},
};

class TokenizerCostTest : public testing::TestWithParam<Row> {};

TEST_P(TokenizerCostTest, IsLinear) {
    std::string text;
    text.reserve(kUnits * GetParam().unit.size() + GetParam().end.size());
    for (std::size_t i = 0; i < kUnits; ++i) text += GetParam().unit;
    text += GetParam().end;
    Tokens tokens;
    tokenize(text, tokens);
    EXPECT_EQ(tokens.list.size(), kUnits * GetParam().each + GetParam().more);
}

INSTANTIATE_TEST_SUITE_P(Rows, TokenizerCostTest, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace grainside::text
