#include "rules/wording_template.h"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace grainside::rules {
namespace {

struct Row {
    std::string_view name, text, want;  // want: the filled text
};

constexpr Row kRows[] = {
    {"no_value", "imitation leather", "imitation leather"},
    {"one", "imitation leather ({says})", "imitation leather (polyurethane)"},
    {"all", "{says} {called} {other} {part} {words} {place} {share}",
     "polyurethane leather cotton lining PU leather Italy 60"},
    {"twice", "{part}: {says} {part}", "lining: polyurethane lining"},
    {"side_by_side", "{part}{share}", "lining60"},
    {"nothing", "", ""},
};

class TemplateTest : public testing::TestWithParam<Row> {};

TEST_P(TemplateTest, IsFilled) {
    ASSERT_EQ(template_fault(GetParam().text), "");
    const TemplateValues values = {.says = "polyurethane",
                                   .called = "leather",
                                   .other = "cotton",
                                   .part = "lining",
                                   .words = "PU leather",
                                   .place = "Italy",
                                   .share = "60"};
    EXPECT_EQ(fill_template(GetParam().text, values), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, TemplateTest, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

TemplateValues polyurethane() {
    TemplateValues values;
    values.says = "polyurethane";
    return values;
}

TEST(Template, OffersNothingWhereAValueIsMissing) {
    EXPECT_EQ(fill_template("{says} ({other})", polyurethane()), "");
    EXPECT_EQ(fill_template("{says}", polyurethane()), "polyurethane");
}

// What a listing says is never read as a template.
TEST(Template, ValuesAreNotFilledAgain) {
    TemplateValues values = polyurethane();
    values.words = "{says} }{";
    EXPECT_EQ(fill_template("{words}", values), "{says} }{");
}

TEST(Template, FaultsAreSaid) {
    EXPECT_EQ(template_fault("{colour}"), "'{colour}' is no value of a template");
    EXPECT_EQ(template_fault("{Says}"), "'{Says}' is no value of a template");
    EXPECT_EQ(template_fault("{}"), "'{}' is no value of a template");
    EXPECT_NE(template_fault("a {says"), "");
    EXPECT_NE(template_fault("says}"), "");
    EXPECT_NE(template_fault("{"), "");
}

}  // namespace
}  // namespace grainside::rules
