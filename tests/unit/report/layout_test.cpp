// Cells, lines and excerpts.
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "report/cell_width.h"
#include "report/excerpts.h"
#include "report/plain_lines.h"

namespace grainside::report {
namespace {

struct WidthRow {
    std::string_view name, text;
    std::size_t want;
};

// Expected widths: Unicode Standard Annex #11 (W and F are wide) and the general categories Mn and Me.
constexpr WidthRow kWidths[] = {
    {"ascii", "leather", 7},
    {"latin", "caf\xC3\xA9", 4},
    {"combining_accent", "cafe\xCC\x81", 4},
    {"ideograph", "\xE9\x9D\xA9", 2},
    {"hangul", "\xEA\xB0\x80", 2},
    {"full_width_letter", "\xEF\xBC\xA1", 2},
    {"half_width_katakana", "\xEF\xBD\xB1", 1},
    {"handbag_emoji", "\xF0\x9F\x91\x9C", 2},
    {"cyrillic", "\xD0\xB0", 1},
    {"replacement", "\xEF\xBF\xBD", 1},
    {"broken_byte", "\xFF", 1},
};

class CellWidth : public testing::TestWithParam<WidthRow> {};

TEST_P(CellWidth, Counts) {
    EXPECT_EQ(cells_of(GetParam().text), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, CellWidth, testing::ValuesIn(kWidths),
                         [](const auto& row) { return std::string(row.param.name); });

struct LineRow {
    std::string_view name, text;
    std::size_t cells;
    std::string_view want;
};

constexpr LineRow kOneLine[] = {
    {"fits", "full grain", 10, "full grain"},
    {"blanks_become_one_space", " full \n\t grain ", 10, "full grain"},
    {"cut_in_the_middle", "abcdefghijklmnopqrstuvwxyz", 12, "abcdef...xyz"},
    {"wide_characters", "\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9", 8,
     "\xE9\x9D\xA9\xE9\x9D\xA9..."},
    {"inert", "\x1B[2J\xE2\x80\xAE", 20, "?[2J???"},
    {"empty", "", 8, ""},
};

class OneLine : public testing::TestWithParam<LineRow> {};

TEST_P(OneLine, Fits) {
    const std::string line = one_line(GetParam().text, GetParam().cells);
    EXPECT_EQ(line, GetParam().want);
    EXPECT_LE(cells_of(line), GetParam().cells);
}

INSTANTIATE_TEST_SUITE_P(Rows, OneLine, testing::ValuesIn(kOneLine),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(OneLine, IsBoundedWhateverTheText) {
    std::string marks = "e";
    for (int i = 0; i < 500000; ++i) marks += "\xCC\x81";  // combining accents take no cell
    EXPECT_LE(one_line(marks, 20).size(), 400U);
    EXPECT_LE(one_line(std::string(std::size_t{1} << 20, 'x'), 20).size(), 20U);
    EXPECT_LE(one_line(std::string(std::size_t{1} << 20, '\xFF'), 20).size(), 20U);
}

struct WrapRow {
    std::string_view name, text;
    std::string_view want;  // at indent 2, width 12
};

constexpr WrapRow kWrap[] = {
    {"short", "one", "one\n"},
    {"empty", "", "\n"},
    {"exact", "ten  cells", "ten cells\n"},
    {"two_lines", "one two three", "one two\n  three\n"},
    {"space_at_the_edge", "abcdefghij klm", "abcdefghij\n  klm\n"},
    {"long_word", "abcdefghijklmno", "abcdefghij\n  klmno\n"},
    {"wide", "\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9",
     "\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9\xE9\x9D\xA9\n  \xE9\x9D\xA9\n"},
    {"inert",
     "a\x1B"
     "b",
     "a?b\n"},
};

class Wrapped : public testing::TestWithParam<WrapRow> {};

TEST_P(Wrapped, BreaksAtSpaces) {
    std::string out;
    append_wrapped(out, GetParam().text, 2, 12);
    EXPECT_EQ(out, GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, Wrapped, testing::ValuesIn(kWrap),
                         [](const auto& row) { return std::string(row.param.name); });

// The excerpts of `text` around each '<...>' of it, joined with '|'.
std::string excerpts_around(std::string_view marked) {
    std::string text;
    std::vector<MarkedSpan> marks;
    for (const char c : marked) {
        if (c == '<') {
            marks.push_back({text.size(), text.size(), Grade::vague});
        } else if (c == '>') {
            marks.back().end = text.size();
        } else {
            text += c;
        }
    }
    std::string out;
    for (const Excerpt& excerpt : cut_excerpts(text, marks)) {
        if (!out.empty()) out += '|';
        out += text.substr(excerpt.start, excerpt.end - excerpt.start);
    }
    return out;
}

std::string filler() {
    std::string text;
    for (int i = 0; i < 30; ++i) text += "Made for every day. ";
    return text;
}

TEST(Excerpts, ShowAShortFieldWhole) {
    EXPECT_EQ(excerpts_around("One. A <bag>. Two."), "One. A bag. Two.");
}

TEST(Excerpts, ShowNothingWithoutMarks) {
    EXPECT_EQ(excerpts_around("One."), "");
    EXPECT_EQ(excerpts_around(filler()), "");
}

TEST(Excerpts, CutToTheSentence) {
    EXPECT_EQ(excerpts_around(filler() + "A <bag> of ours. " + filler()), "A bag of ours.");
}

TEST(Excerpts, CutToTheLine) {
    EXPECT_EQ(excerpts_around(filler() + "\n- a <bag>\n" + filler()), "- a bag");
}

TEST(Excerpts, JoinNeighbours) {
    EXPECT_EQ(excerpts_around(filler() + "A <bag>. A <belt>. " + filler() + "A <shoe>."), "A bag. A belt.|A shoe.");
}

TEST(Excerpts, StandForTwoMarksInOneSentence) {
    EXPECT_EQ(excerpts_around(filler() + "A <bag> and a <belt>. " + filler()), "A bag and a belt.");
}

TEST(Excerpts, AreBoundedWithoutSentences) {
    const std::string words = [] {
        std::string text;
        for (int i = 0; i < 200; ++i) text += "word ";
        return text;
    }();
    const std::string out = excerpts_around(words + "<bag> " + words);
    EXPECT_LE(out.size(), 2 * kContextBytes + 3);
    EXPECT_TRUE(out.starts_with("word ") && out.ends_with(" word")) << out;
    const std::string solid(1000, 'x');
    EXPECT_EQ(excerpts_around(solid + "<bag>" + solid).size(), 2 * kContextBytes + 3);
}

TEST(Excerpts, NeverCutACharacter) {
    std::string accents;
    for (int i = 0; i < 500; ++i) accents += "\xE9\x9D\xA9";
    const std::string out = excerpts_around(accents + "<bag>" + accents);
    EXPECT_EQ(out.find("bag") % 3, 0U);
    EXPECT_EQ(out.size() % 3, 0U);
}

TEST(Excerpts, ShowBothEndsOfAMegabyte) {
    const std::string word(std::size_t{1} << 20, 'x');
    const std::string out = excerpts_around("A <" + word + "> bag.");
    EXPECT_EQ(out, "A " + std::string(kMarkHeadBytes, 'x') + '|' + std::string(kMarkTailBytes, 'x') + " bag.");
}

}  // namespace
}  // namespace grainside::report
