#include "text/segments.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

#include "text/tokenizer.h"
#include "text/wrapped_lines.h"

namespace grainside::text {
namespace {

struct Row {
    std::string_view name;
    std::string_view text;
    // One segment a line: kind, 'L' if it starts a line, 'B' if it starts a block, the words between bars.
    std::string_view want;
};

std::string dump_segments(std::string_view text) {
    static constexpr std::string_view kKinds[] = {"sentence", "question", "item", "heading"};
    Tokens tokens;
    std::vector<Segment> segments;
    tokenize(text, tokens);
    join_wrapped_lines(tokens);
    cut_segments(tokens, segments);
    std::string out;
    for (const Segment& segment : segments) {
        if (!out.empty()) out += '\n';
        out += kKinds[static_cast<std::size_t>(segment.kind)];
        out += ' ';
        if (segment.starts_line != 0) out += 'L';
        if (segment.starts_block != 0) out += 'B';
        out += " |";
        const std::uint32_t start = tokens.list[segment.first].start;
        out += text.substr(start, tokens.list[segment.last - 1].end - start);
        out += '|';
    }
    return out;
}

constexpr Row kRows[] = {
    {"nothing", "", ""},
    {"marks_only", ", ; - .\n!\n\n|", ""},
    {"one", "Soft leather", "sentence LB |Soft leather|"},
    {"sentences", "Soft leather. Brass buckle! Cotton",
     "sentence LB |Soft leather|\nsentence  |Brass buckle|\nsentence  |Cotton|"},
    {"question", "Is it leather? It is.", "question LB |Is it leather|\nsentence  |It is|"},
    {"colon_and_semicolon_do_not_end", "Lining: cotton; strap: leather",
     "sentence LB |Lining: cotton; strap: leather|"},
    {"comma_before_a_segment_is_left_out", "a. , b", "sentence LB |a|\nsentence  |b|"},
    {"closing_marks_stay_with_what_they_close", "(Soft.) \"Real.\" Yes",
     "sentence LB |(Soft|\nsentence  |\"Real|\nsentence  |Yes|"},
    {"lines", "Soft\nStrong", "sentence LB |Soft|\nsentence L |Strong|"},
    {"paragraphs", "Soft\n\nStrong. Light", "sentence LB |Soft|\nsentence LB |Strong|\nsentence  |Light|"},
    {"items", "Good:\n- soft. Light\n- strong\nend",
     "sentence LB |Good:|\nitem LB |soft|\nitem  |Light|\nitem LB |strong|\nsentence LB |end|"},
    {"item_that_asks", "- soft?", "question LB |soft|"},
    {"headings", "# Care\nWipe dry.", "heading LB |Care|\nsentence LB |Wipe dry|"},
    {"html", "<h2>Care</h2><ul><li>Wipe</li><li>Dry</li></ul><p>End",
     "heading LB |Care|\nitem LB |Wipe|\nitem LB |Dry|\nsentence LB |End|"},
    {"cells", "| Lining | cotton |\n| Strap | leather |",
     "sentence LB |Lining|\nsentence  |cotton|\nsentence L |Strap|\nsentence  |leather|"},
    {"bullets_in_a_line", "soft \u2022 strong", "sentence LB |soft|\nsentence  |strong|"},
    {"wrapped_prose", "The body of this bag is made of full\ngrain leather. It lasts",
     "sentence LB |The body of this bag is made of full|\nsentence L |grain leather|\nsentence  |It lasts|"},
    {"wrapped_prose_long_enough", "The whole body of this bag is made of full\ngrain leather. It lasts",
     "sentence LB |The whole body of this bag is made of full\ngrain leather|\nsentence  |It lasts|"},
    {"wrapped_after_a_comma", "The whole body of this bag is made of soft,\nsupple leather",
     "sentence LB |The whole body of this bag is made of soft,\nsupple leather|"},
    {"wrapped_twice",
     "The whole body of this bag is made of full grain\nleather from a tannery that has been there for\nyears.",
     "sentence LB |The whole body of this bag is made of full grain\nleather from a tannery that has been there "
     "for\nyears|"},
    {"wrapped_behind_a_small_word", "The whole body of this bag is made and cut in\nPortugal. It lasts",
     "sentence LB |The whole body of this bag is made and cut in\nPortugal|\nsentence  |It lasts|"},
    {"next_line_begins_with_a_capital", "The whole body of this bag is made of full\nGrain leather",
     "sentence LB |The whole body of this bag is made of full|\nsentence L |Grain leather|"},
    {"line_ends_in_a_mark", "The whole body of this bag is made of these:\nleather",
     "sentence LB |The whole body of this bag is made of these:|\nsentence L |leather|"},
    {"blank_line_never_wraps", "The whole body of this bag is made of full\n\ngrain leather",
     "sentence LB |The whole body of this bag is made of full|\nsentence LB |grain leather|"},
    {"item_wraps", "- The whole body of this bag is made of full\ngrain leather\n- b",
     "item LB |The whole body of this bag is made of full\ngrain leather|\nitem LB |b|"},
    {"heading_never_wraps", "# The whole body of this bag is made of full\ngrain leather",
     "heading LB |The whole body of this bag is made of full|\nsentence LB |grain leather|"},
    {"small_cyrillic_wraps_and_han_does_not",
     "The whole body of this bag is made of the best\n\u043A\u043E\u0436\u0430\n"
     "The whole body of this bag is made of the best\n\u76AE",
     "sentence LB |The whole body of this bag is made of the best\n\u043A\u043E\u0436\u0430|\n"
     "sentence L |The whole body of this bag is made of the best|\nsentence L |\u76AE|"},
};

class SegmentsTest : public testing::TestWithParam<Row> {};

TEST_P(SegmentsTest, AreCut) {
    EXPECT_EQ(dump_segments(GetParam().text), GetParam().want);
}

// In order, apart, and leaving out marks only.
TEST_P(SegmentsTest, LeaveOutOnlyMarks) {
    Tokens tokens;
    std::vector<Segment> segments;
    tokenize(GetParam().text, tokens);
    cut_segments(tokens, segments);
    std::uint32_t past = 0;
    const auto expect_marks = [&](std::uint32_t last) {
        for (std::uint32_t i = past; i < last; ++i) {
            EXPECT_NE(tokens.list[i].kind, TokenKind::word);
            EXPECT_NE(tokens.list[i].kind, TokenKind::number);
        }
    };
    for (const Segment& segment : segments) {
        ASSERT_LE(past, segment.first);
        ASSERT_LT(segment.first, segment.last);
        expect_marks(segment.first);
        past = segment.last;
    }
    expect_marks(static_cast<std::uint32_t>(tokens.list.size()));
}

INSTANTIATE_TEST_SUITE_P(Rows, SegmentsTest, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace grainside::text
