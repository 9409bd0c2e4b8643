#include "document/inert_text.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "document/utf8.h"

namespace grainside::document {
namespace {

struct Row {
    std::string_view name, text, want;
};

constexpr Row kRows[] = {
    {"plain", "full grain", "full grain"},
    {"kept", "caf\xC3\xA9 \xE9\x9D\xA9 \xF0\x9F\x91\x9C", "caf\xC3\xA9 \xE9\x9D\xA9 \xF0\x9F\x91\x9C"},
    {"blanks", "a\tb\nc\rd", "a b c d"},
    {"escape", "\x1B[2J", "?[2J"},
    {"delete", "a\x7F", "a?"},
    {"c1",
     "a\xC2\x9B"
     "b",
     "a??b"},
    {"no_break_space_is_kept", "a\xC2\xA0z", "a\xC2\xA0z"},
    {"right_to_left_override", "\xE2\x80\xAE", "???"},
    {"isolate", "\xE2\x81\xA6", "???"},
    {"line_separator", "\xE2\x80\xA8", "???"},
    {"byte_order_mark", "\xEF\xBB\xBF", "???"},
    {"broken", "\xFFz\xC3", "?z?"},
    {"overlong", "\xC0\x8A", "??"},
    {"surrogate", "\xED\xA0\x80", "???"},
};

class InertText : public testing::TestWithParam<Row> {};

TEST_P(InertText, Replaces) {
    EXPECT_EQ(inert_text(GetParam().text), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, InertText, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(InertText, NulByte) {
    EXPECT_EQ(inert_text(std::string_view("a\0b", 3)), "a?b");
}

constexpr Row kPrintable[] = {
    {"plain", "full grain", "full grain"},
    {"line_ends", "a\nb\r\nc\rd\te", "a\nb\nc\nd e"},
    {"last_carriage_return", "a\r", "a\n"},
    {"escape", "\x1B[2J", "\xEF\xBF\xBD[2J"},
    {"c1", "\xC2\x9B", "\xEF\xBF\xBD"},
    {"right_to_left_override", "a\xE2\x80\xAEz", "a\xEF\xBF\xBDz"},
    {"noncharacter", "\xEF\xBF\xBE\xEF\xB7\x90", "\xEF\xBF\xBD\xEF\xBF\xBD"},
    {"broken", "\xFFz", "\xEF\xBF\xBDz"},
    {"kept", "\xE9\x9D\xA9 \xF0\x9F\x91\x9C", "\xE9\x9D\xA9 \xF0\x9F\x91\x9C"},
};

class PrintableText : public testing::TestWithParam<Row> {};

TEST_P(PrintableText, Replaces) {
    EXPECT_EQ(printable_text(GetParam().text), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, PrintableText, testing::ValuesIn(kPrintable),
                         [](const auto& row) { return std::string(row.param.name); });

// The Unicode Standard, chapter 3, table 3-8 (U+FFFD for non-shortest forms) and table 3-7, from memory.
TEST(DecodeUtf8, RefusesWhatTheStandardRefuses) {
    for (const std::string_view bad :
         {"\x80", "\xBF", "\xC0\xAF", "\xC1\xBF", "\xE0\x80\xBF", "\xE0\x9F\xBF", "\xED\xA0\x80", "\xED\xBF\xBF",
          "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF", "\xE9\x9D", "\xF0\x9F\x91", "\xC3 "}) {
        EXPECT_FALSE(decode_utf8(bad, 0).valid) << testing::PrintToString(bad);
        EXPECT_EQ(decode_utf8(bad, 0).length, 1u);
    }
}

TEST(DecodeUtf8, TakesTheBordersOfEachLength) {
    struct Border {
        std::string_view bytes;
        char32_t point;
    };
    for (const Border border :
         {Border{"\x7F", 0x7F}, Border{"\xC2\x80", 0x80}, Border{"\xDF\xBF", 0x7FF}, Border{"\xE0\xA0\x80", 0x800},
          Border{"\xED\x9F\xBF", 0xD7FF}, Border{"\xEE\x80\x80", 0xE000}, Border{"\xEF\xBF\xBF", 0xFFFF},
          Border{"\xF0\x90\x80\x80", 0x10000}, Border{"\xF4\x8F\xBF\xBF", 0x10FFFF}}) {
        const DecodedChar decoded = decode_utf8(border.bytes, 0);
        EXPECT_TRUE(decoded.valid);
        EXPECT_EQ(decoded.point, border.point);
        EXPECT_EQ(decoded.length, border.bytes.size());
    }
}

TEST(MakeExcerpt, CutsLongLinesAtACharacter) {
    std::string line(kMaxExcerptBytes - 1, 'a');
    line += "\xC3\xA9tail";
    EXPECT_EQ(make_excerpt(line, 1), std::string(kMaxExcerptBytes - 1, 'a'));
    EXPECT_EQ(make_excerpt(line, kMaxExcerptBytes + 1), "");
    EXPECT_EQ(make_excerpt("a\tb", 1), "a b");
}

}  // namespace
}  // namespace grainside::document
