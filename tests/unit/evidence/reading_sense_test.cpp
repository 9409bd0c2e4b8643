// Dossiers over the default book that cannot be meant as they stand: a word against its numbers, an entry that was made
// twice, values and days that nobody meets.
#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "grainside/dossier.h"
#include "support/built_in_evidence.h"
#include "support/fault_dump.h"

namespace grainside::evidence {
namespace {

struct Read {
    bool refused = false;
    std::vector<Issue> issues;  // warnings where it was not refused
};

Read read(std::string text) {
    const auto dossier =
        Dossier::parse("d.yaml", std::move(text), {}, support::built_in_evidence(), {.today = "2026-11-26"});
    return {!dossier, dossier ? dossier.value().warnings() : dossier.issues()};
}

struct Row {
    std::string_view name, part, reading, want;
};

// One reading, the third line.
constexpr Row kReadings[] = {
    {"coat_and_no_coat", "body",
     "method: coat-microscopy, outcome: no-coat, coat: 0.3 +- 0.02 mm, total: 1.4 +- 0.1 mm",
     "3:36 outcome-against-figures"},
    {"coat_as_it_says", "body",
     "method: coat-microscopy, outcome: coat-above-limit, coat: 0.3 +- 0.02 mm, total: 1.4 +- 0.1 mm", ""},
    {"coat_in_doubt", "body",
     "method: coat-microscopy, outcome: coat-to-limit, coat: 0.16 +- 0.02 mm, total: 1.4 +- 0.1 mm", ""},
    {"coat_on_cloth_of_any_thickness", "body",
     "method: coat-microscopy, outcome: coat-on-cloth, coat: 0.5 +- 0.02 mm, total: 1.0 +- 0.1 mm", ""},
    {"coat_not_decided", "body",
     "method: coat-microscopy, outcome: unclear, coat: 0.3 +- 0.02 mm, total: 1.4 +- 0.1 mm", ""},
    {"more_than_a_third", "body",
     "method: coat-microscopy, outcome: coat-above-limit, coat: 0.9 +- 0.02 mm, total: 1.4 +- 0.1 mm",
     "3:36 outcome-against-figures"},
    {"less_than_a_third", "body",
     "method: coat-microscopy, outcome: coat-above-third, coat: 0.2 +- 0.02 mm, total: 1.4 +- 0.1 mm",
     "3:36 outcome-against-figures"},
    {"weighed_as_zinc_called_brass", "hardware",
     "method: weighing-in-water, outcome: reads-near-brass, in_air: 21.12 +- 0.002 g, in_water: 17.94 +- 0.006 g, "
     "water: "
     "21 +- 0.6 degC",
     "3:38 outcome-against-figures"},
    {"weighed_as_zinc", "hardware",
     "method: weighing-in-water, outcome: reads-near-zinc, in_air: 21.12 +- 0.002 g, in_water: 17.94 +- 0.006 g, "
     "water: 21 "
     "+- 0.6 degC",
     ""},
    {"tanned_with_chromium_or_not", "body",
     "method: xrf-leather, outcome: chromium-trace, composition: {Cr: 2.5 +- 0.2 %}", "3:32 outcome-against-figures"},
    {"fibre_of_another_name", "lining",
     "method: fibre-analysis, outcome: cotton, shares: {cotton: 3 +- 1 %, polyester: 97 +- 1 %}",
     "3:35 outcome-against-figures"},
    {"grade_of_another_word", "body", "method: rub, outcome: felt-clean, rub-grade: exactly 2",
     "3:24 outcome-against-figures"},
    {"no_layer_and_its_thickness", "hardware", "method: plating-section, outcome: no-layer, plating: 0.5 +- 0.05 um",
     "3:36 outcome-against-figures"},
    // values that nobody meets
    {"thick_as_a_wall", "body", "method: thickness-gauge, thickness: 140 +- 1 mm", "3:38 unusual-value"},
    {"thick_as_a_belt", "body", "method: thickness-gauge, thickness: 4 +- 0.1 mm", ""},
    {"thin_as_nothing", "body", "method: thickness-gauge, thickness: 0.0014 +- 0.0001 mm", "3:38 unusual-value"},
    {"less_sure_than_nothing", "body", "method: thickness-gauge, thickness: 1.4 +- 9 mm", "3:38 wide-uncertainty"},
    {"total_in_another_unit", "body", "method: coat-microscopy, coat: 0.2 +- 0.02 mm, total: 140 +- 1 mm",
     "3:56 unusual-value"},
    {"no_such_grade", "body", "method: rub, rub-grade: exactly 45", "3:26 unusual-value"},
    // days
    {"before_anybody_wrote", "body", "method: loupe, outcome: pores-even, date: 0001-01-01", "3:44 early-date"},
    {"long_ago", "body", "method: loupe, outcome: pores-even, date: 1980-01-01", ""},
};
class ReadingSense : public testing::TestWithParam<Row> {};
TEST_P(ReadingSense, IsHeldAgainstTheBook) {
    const Read got = read("sample: {}\nparts: {" + std::string(GetParam().part) + ": {readings: [\n{" +
                          std::string(GetParam().reading) + "}]}}\n");
    EXPECT_EQ(support::dump_places(got.issues), GetParam().want);
    EXPECT_EQ(got.refused, GetParam().want.find("against-figures") != std::string_view::npos);
    for (const Issue& issue : got.issues) EXPECT_FALSE(issue.hint.empty()) << issue.code;
}
INSTANTIATE_TEST_SUITE_P(Rows, ReadingSense, testing::ValuesIn(kReadings),
                         [](const auto& row) { return std::string(row.param.name); });

// Which outcome the numbers give stands in the hint.
TEST(ReadingSense, NamesTheOutcomeThatTheNumbersGive) {
    const Read coat = read(
        "sample: {}\nparts: {body: {readings: [{method: coat-microscopy, outcome: no-coat, coat: 0.3 +- 0.02 mm, "
        "total: "
        "1.4 +- 0.1 mm}]}}\n");
    ASSERT_EQ(coat.issues.size(), 1U);
    EXPECT_EQ(coat.issues[0].message,
              "the outcome 'no-coat' is not seen with coat 0.3 +- 0.02 mm: it asks for at most 0.02 mm");
    EXPECT_NE(coat.issues[0].hint.find("the figures give `coat-above-limit`"), std::string::npos)
        << coat.issues[0].hint;
    const Read weighed = read(
        "sample: {}\nparts: {hardware: {readings: [{method: weighing-in-water, outcome: reads-near-brass, in_air: "
        "21.12 "
        "+- 0.002 g, in_water: 17.94 +- 0.006 g, water: 21 +- 0.6 degC}]}}\n");
    ASSERT_EQ(weighed.issues.size(), 1U);
    EXPECT_NE(weighed.issues[0].message.find("density 6.6"), std::string::npos) << weighed.issues[0].message;
    EXPECT_NE(weighed.issues[0].hint.find("`reads-near-zinc` (6.5 to 6.9 g/cm3)"), std::string::npos)
        << weighed.issues[0].hint;
}

struct TwiceRow {
    std::string_view name, first, second, want;
};
constexpr TwiceRow kTwice[] = {
    {"the_same", "method: loupe, outcome: repeating-print, date: 2026-09-01",
     "method: loupe, outcome: repeating-print, date: 2026-09-01", "4:1 same-reading-twice"},
    {"in_another_order", "method: loupe, outcome: repeating-print, date: 2026-09-01",
     "date: 2026-09-01, outcome: repeating-print, method: loupe", "4:1 same-reading-twice"},
    {"another_day", "method: loupe, outcome: repeating-print, date: 2026-09-01",
     "method: loupe, outcome: repeating-print, date: 2026-09-02", ""},
    {"another_outcome", "method: loupe, outcome: repeating-print", "method: loupe, outcome: pores-even", ""},
    {"a_note_more", "method: loupe, outcome: repeating-print", "method: loupe, outcome: repeating-print, note: back",
     ""},
    {"another_photo", "method: loupe, outcome: repeating-print, photo: a.jpg",
     "method: loupe, outcome: repeating-print, photo: b.jpg", "3:50 no-picture; 4:50 no-picture"},
    {"the_same_numbers", "method: thickness-gauge, thickness: 1.4 +- 0.1 mm",
     "method: thickness-gauge, thickness: 1.4 +- 0.1 mm", "4:1 same-reading-twice"},
    {"the_same_shares", "method: xrf-leather, composition: {Cr: 2 +- 0.1 %}",
     "method: xrf-leather, composition: {Cr: 2 +- 0.1 %}", "4:1 same-reading-twice"},
    {"other_shares", "method: xrf-leather, composition: {Cr: 2 +- 0.1 %}",
     "method: xrf-leather, composition: {Cr: 2 +- 0.2 %}", ""},
};
class ReadingTwice : public testing::TestWithParam<TwiceRow> {};
TEST_P(ReadingTwice, IsTold) {
    const Read got = read("sample: {}\nparts: {body: {readings: [\n{" + std::string(GetParam().first) + "},\n{" +
                          std::string(GetParam().second) + "}]}}\n");
    EXPECT_FALSE(got.refused);
    EXPECT_EQ(support::dump_places(got.issues), GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, ReadingTwice, testing::ValuesIn(kTwice),
                         [](const auto& row) { return std::string(row.param.name); });

// The same test of another part is another test.
TEST(ReadingTwice, IsNotToldOfTwoParts) {
    const Read got = read(
        "sample: {}\nparts: {body: {readings: [{method: loupe, outcome: pores-even}]}, strap: {readings: [{method: "
        "loupe, "
        "outcome: pores-even}]}}\n");
    EXPECT_EQ(support::dump_places(got.issues), "");
}

TEST(DossierSense, TellsDaysOfAnotherAgeAndPricesOfNothing) {
    const Read got = read("sample: {bought: 1926-01-01, price: 0 EUR}\nlisting: {captured: 0001-01-01, name: A bag}\n");
    EXPECT_FALSE(got.refused);
    EXPECT_EQ(support::dump_places(got.issues), "1:18 early-date; 1:37 nothing-paid; 2:21 early-date");
    EXPECT_EQ(support::dump_places(read("sample: {bought: 2026-01-01, price: 12 EUR}\n").issues), "");
}

}  // namespace
}  // namespace grainside::evidence
