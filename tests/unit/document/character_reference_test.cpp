#include "document/character_reference.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace grainside::document {
namespace {

struct Row {
    std::string_view name;
    std::string_view text;
    char32_t code;
    std::uint32_t length;
};

// Code points: HTML standard, "Named character references" and "Numeric character reference end state".
constexpr Row kRows[] = {
    {"first_in_the_table", "&AElig;", 0xC6, 7},
    {"last_in_the_table", "&zwnj;", 0x200C, 6},
    {"case_matters", "&Eacute;&eacute;", 0xC9, 8},
    {"euro", "&euro;", 0x20AC, 6},
    {"apostrophe", "&apos;", 0x27, 6},
    {"no_break_space", "&nbsp;", 0xA0, 6},
    {"en_dash", "&ndash;", 0x2013, 7},
    {"trade_mark", "&trade;", 0x2122, 7},
    {"micro", "&micro;", 0xB5, 7},
    {"half", "&frac12;", 0xBD, 8},
    {"decimal", "&#233;", 0xE9, 6},
    {"hexadecimal", "&#xe9;", 0xE9, 6},
    {"leading_noughts", "&#00000065;", 'A', 11},
    {"windows_1252", "&#146;", 0x2019, 6},
    {"nought", "&#0;", 0xFFFD, 4},
    {"surrogate", "&#xD800;", 0xFFFD, 8},
    {"past_unicode", "&#x110000;", 0xFFFD, 10},
    {"last_of_unicode", "&#x10FFFF;", 0x10FFFF, 10},
    {"no_semicolon", "&eacute x", 0, 0},
    {"unknown", "&leather;", 0, 0},
    {"wrong_case", "&EURO;", 0, 0},
    {"too_long", "&aaaaaaaaaaaaaaaaaaaa;", 0, 0},
    {"too_many_digits", "&#000000065;", 0, 0},
    {"no_digits", "&#;", 0, 0},
    {"no_hexadecimal_digits", "&#x;", 0, 0},
    {"hexadecimal_digit_in_decimal", "&#1a;", 0, 0},
    {"end_of_text", "&", 0, 0},
    {"end_after_number_sign", "&#", 0, 0},
    {"end_in_number", "&#12", 0, 0},
    {"empty", "&;", 0, 0},
};

class CharacterReferenceTest : public testing::TestWithParam<Row> {};

TEST_P(CharacterReferenceTest, IsRead) {
    const std::string text = std::string("x").append(GetParam().text);
    const CharacterReference reference = read_character_reference(text, 1);
    EXPECT_EQ(reference.code, GetParam().code);
    EXPECT_EQ(reference.length, GetParam().length);
}

INSTANTIATE_TEST_SUITE_P(Rows, CharacterReferenceTest, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace grainside::document
