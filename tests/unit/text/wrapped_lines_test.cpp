// Which line ends only wrap a line. Words are dumped folded (token_dump.h): what is joined reads as behind a space.
#include "text/wrapped_lines.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "text/tokenizer.h"
#include "token_checks.h"
#include "token_dump.h"

namespace grainside::text {
namespace {

// Forty bytes, so that a line is long enough with one byte more.
constexpr std::string_view kForty = "abcdefg abcdefg abcdefg abcdefg abcdefgh";
static_assert(kForty.size() == 40);

Tokens joined(std::string_view text) {
    Tokens tokens;
    tokenize(text, tokens);
    join_wrapped_lines(tokens);
    return tokens;
}

struct Row {
    std::string_view name;
    std::string_view before;  // what stands behind forty bytes in the first line
    std::string_view after;   // the next line
    std::string_view want;    // "<line>" or "<blank>" where the end stays; the token behind it where it goes
};

constexpr Row kRows[] = {
    {"small_letter", " full", "grain", "_grain"},
    {"a_byte_more_than_forty", "i", "grain", "_grain"},
    {"forty_bytes", "", "grain", "<line>"},
    {"capital", " full", "Grain", "<line>"},
    {"all_capitals", " full", "GRAIN", "<line>"},
    {"number_next", " full", "12 mm", "<line>"},
    {"comma_before", " soft,", "grain", "_grain"},
    {"number_before", " of 12", "parts", "_parts"},
    {"stop_before", " soft.", "grain", "<line>"},
    {"colon_before", " soft:", "grain", "<line>"},
    {"semicolon_before", " soft;", "grain", "<line>"},
    {"dash_before", " soft \u2013", "grain", "<line>"},
    {"bracket_before", " (soft)", "grain", "<line>"},
    {"bracket_next", " soft", "(grain)", "<line>"},
    {"bullet_next", " soft", "- grain", "<line>"},
    {"blank_line", " full", "\ngrain", "<blank>"},
    {"carriage_return", " full\r", "grain", "_grain"},
    {"cyrillic", " full", "\u043A\u043E\u0436\u0430", "_\u043A\u043E\u0436\u0430"},
    {"cyrillic_capital", " full", "\u041A\u043E\u0436\u0430", "<line>"},
    {"han_has_no_case", " full", "\u76AE\u9769", "<line>"},
    // A small word that no line ends with leads on to any word.
    {"made_in", " made in", "Portugal", "_portugal^"},
    {"of_one_letter", " with a", "Portugal", "_portugal^"},
    {"of_in_capitals", " made IN", "Portugal", "<line>"},
    {"three_letters", " from the", "Portugal", "<line>"},
    {"behind_a_number_it_is_a_unit", " 55 cm", "Portugal", "<line>"},
    {"behind_a_number_a_small_letter_still_wraps", " 55 cm", "wide", "_wide"},
    {"small_word_and_number_next", " made in", "1998", "<line>"},
    {"small_word_and_bracket_next", " made in", "(Portugal)", "<line>"},
    {"small_word_before_a_blank_line", " made in", "\nPortugal", "<blank>"},
    {"small_word_and_comma", " made in,", "Portugal", "<line>"},
};

class WrappedLines : public testing::TestWithParam<Row> {};

TEST_P(WrappedLines, AreJoined) {
    const Row& row = GetParam();
    const std::string line = std::string(kForty) + std::string(row.before);
    const std::string text = line + "\n" + std::string(row.after);
    const Tokens tokens = joined(text);
    const auto behind = std::find_if(tokens.list.begin(), tokens.list.end(),
                                     [&](const Token& token) { return token.end > kForty.size() + row.before.size(); });
    ASSERT_NE(behind, tokens.list.end());
    EXPECT_EQ(dump_token(tokens, *behind), row.want) << dump_tokens(tokens);
}

INSTANTIATE_TEST_SUITE_P(Rows, WrappedLines, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

// Nothing but line ends goes, and what stays keeps its place and its form.
TEST_P(WrappedLines, LeaveAllElse) {
    const std::string text =
        std::string(kForty) + std::string(GetParam().before) + "\n" + std::string(GetParam().after) + "\nEnd";
    Tokens before;
    tokenize(text, before);
    const Tokens after = joined(text);
    EXPECT_EQ(first_fault(text, after), "");
    std::size_t kept = 0;
    for (const Token& token : before.list) {
        const bool here =
            kept < after.list.size() && after.list[kept].start == token.start && after.list[kept].kind == token.kind;
        if (!here) {
            EXPECT_EQ(token.kind, TokenKind::line_end);
            continue;
        }
        EXPECT_EQ(after.folded_text(after.list[kept]), before.folded_text(token));
        ++kept;
    }
    EXPECT_EQ(kept, after.list.size());
}

// A heading ends with its line, whatever comes; the line behind it wraps again.
TEST(WrappedLinesOf, HeadingsStay) {
    const std::string line = std::string(kForty) + " full\n";
    const std::string heading = dump_tokens(joined("# " + line + "grain"));
    EXPECT_TRUE(heading.ends_with("_full <line> grain")) << heading;
    const std::string both = dump_tokens(joined("# " + line + line + "grain"));
    EXPECT_TRUE(both.ends_with("_full _grain")) << both;
    EXPECT_NE(both.find("_full <line> abcdefg"), std::string::npos) << both;
}

TEST(WrappedLinesOf, ItemsWrap) {
    const std::string item = "- " + std::string(kForty) + " full\ngrain\n- b";
    EXPECT_TRUE(dump_tokens(joined(item)).ends_with("_full _grain <line> <bullet> _b")) << dump_tokens(joined(item));
}

// A line counts from where it begins, joined or not: the short second line ends a line.
TEST(WrappedLinesOf, EachLineCountsForItself) {
    const std::string text = std::string(kForty) + " full\ngrain\nleather";
    EXPECT_TRUE(dump_tokens(joined(text)).ends_with("_full _grain <line> leather")) << dump_tokens(joined(text));
}

TEST(WrappedLinesOf, NothingIsNothing) {
    EXPECT_TRUE(joined("").list.empty());
    EXPECT_TRUE(joined("\n").list.empty());
}

}  // namespace
}  // namespace grainside::text
