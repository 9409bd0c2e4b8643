// Code points: The Unicode Standard, code charts of Latin-1, Greek, General Punctuation, Letterlike Symbols and
// Mathematical Operators.
#include "measure/plain_signs.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace grainside::measure {
namespace {

struct Row {
    std::string_view name, text, want;
};

constexpr Row kRows[] = {
    {"plain_stays", "0.21 +- 0.02 mm", "0.21 +- 0.02 mm"},
    {"plus_minus",
     "1\xC2\xB1"
     "2",
     "1+-2"},
    {"micro_and_mu", "\xC2\xB5\xCE\xBC", "uu"},
    {"raised_digit_never_joins_a_number", "5\xC2\xB2", "5^2"},
    {"degree_never_joins_numbers",
     "2\xC2\xB0"
     "5",
     "2deg5"},
    {"spaces", "1\xC2\xA0\xE2\x80\x89\t2", "1   2"},
    {"dashes", "1\xE2\x80\x93\xE2\x88\x92\xE2\x80\x90", "1---"},
    {"per_mille", "\xE2\x80\xB0", "permille"},
    {"at_most", "\xE2\x89\xA4\xE2\x89\xA5", "<=>="},
    {"nothing", "", ""},
};

class PlainSigns : public testing::TestWithParam<Row> {};

TEST_P(PlainSigns, AreAscii) {
    const std::optional<std::string> plain = plain_signs(GetParam().text);
    ASSERT_TRUE(plain);
    EXPECT_EQ(*plain, GetParam().want);
    EXPECT_EQ(plain_signs(*plain), plain);
}

INSTANTIATE_TEST_SUITE_P(Rows, PlainSigns, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(PlainSigns, RefuseOtherSigns) {
    using namespace std::string_view_literals;
    for (const std::string_view text : {"\x00"sv, "\x1B[1m"sv, "\n"sv, "\x7F"sv, "\xC2"sv, "\xFF"sv, "\xC3\xA9"sv,
                                        "\xE2\x80\xAE"sv, "\xED\xA0\x80"sv, "\xF0\x9F\x91\x9C"sv}) {
        EXPECT_FALSE(plain_signs(text)) << testing::PrintToString(text);
    }
}

}  // namespace
}  // namespace grainside::measure
