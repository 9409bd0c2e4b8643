#include "vocabulary/spelling.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace grainside::vocabulary {
namespace {

std::string joined(const std::vector<std::string>& forms) {
    std::string text;
    for (const std::string& form : forms) text += (text.empty() ? "" : " ") + form;
    return text;
}

struct Row {
    std::string_view name, word, want;
};

// The plurals of a grammar: Quirk and others, A Comprehensive Grammar of the English Language (1985), 5.79-5.81.
constexpr Row kNumber[] = {
    {"strap", "strap", "straps"},
    {"body", "body", "bodies"},
    {"alloy", "alloy", "alloys"},
    {"box", "box", "boxes"},
    {"finish", "finish", "finishes"},
    {"clutch", "clutch", "clutches"},
    {"edge", "edge", "edges"},
    {"canvas", "canvas", "canvases"},
    {"singular_of_straps", "straps", "strapses strap"},
    {"singular_of_bodies", "bodies", "bodieses body"},
    {"singular_of_finishes", "finishes", "finisheses finish"},
    {"brass_is_no_plural", "brass", "brasses"},
    {"short", "pu", ""},
    {"digits", "304", ""},
    {"letters_and_digits", "316l", ""},
};

class NumberForms : public testing::TestWithParam<Row> {};

// A listed plural lets its singular in; forms that nobody writes do no harm, so only the wanted ones are asked for.
TEST_P(NumberForms, HoldThePluralOrTheSingular) {
    const std::vector<std::string> forms = number_forms(GetParam().word);
    const std::string_view want = GetParam().want;
    const std::string_view form = want.substr(want.find_last_of(' ') + 1);
    if (form.empty()) {
        EXPECT_EQ(joined(forms), "");
    } else {
        EXPECT_NE((" " + joined(forms) + " ").find(" " + std::string(form) + " "), std::string::npos) << joined(forms);
    }
}

INSTANTIATE_TEST_SUITE_P(Rows, NumberForms, testing::ValuesIn(kNumber),
                         [](const auto& row) { return std::string(row.param.name); });

constexpr Row kPaired[] = {
    {"whole_word", "fibre", "fiber"},
    {"other_way", "fiber", "fibre"},
    {"inside_a_word", "microfibre", "microfiber"},
    {"short_side_as_whole_word", "grey", "gray"},
    {"short_side_stays_inside_a_word", "greyhound", ""},
    {"neither_side", "cotton", ""},
};

class PairedForms : public testing::TestWithParam<Row> {};

TEST_P(PairedForms, AreTheOtherSide) {
    SpellingPairs pairs;
    pairs.add("fibre", "fiber");
    pairs.add("grey", "gray");
    EXPECT_EQ(joined(pairs.forms(GetParam().word)), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, PairedForms, testing::ValuesIn(kPaired),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(Spelling, OnlyRealWordsAreJoined) {
    EXPECT_TRUE(can_be_joined("full", "grain"));
    EXPECT_TRUE(can_be_joined("pu", "skin"));
    EXPECT_FALSE(can_be_joined("a", "grain"));
    EXPECT_FALSE(can_be_joined("pu", "bag"));
    EXPECT_FALSE(can_be_joined("grade", "304"));
    EXPECT_FALSE(can_be_joined("316l", "steel"));
}

}  // namespace
}  // namespace grainside::vocabulary
