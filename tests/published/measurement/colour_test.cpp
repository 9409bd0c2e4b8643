// Colour differences and grey scale ratings against published pairs and the two grey scale standards.
//
// Marks: 'seen' where a page with the figures was read, 'from memory' where not, 'recomputed' where the figure follows
// from formulas that are themselves seen or from memory.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "csv_file.h"
#include "measure/colour_difference.h"
#include "measure/grey_scale.h"

namespace grainside::measure {
namespace {

using published::CsvRow;
using published::number_in;

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();

template <typename Row>
std::string name_of(const testing::TestParamInfo<Row>& info) {
    return std::string(info.param.name);
}

// Sharma, Wu and Dalal, Color Research and Application 30 (2005), table 1 (seen: a public test file that names the
// authors' data file as its origin). Printed to four decimals, so half a unit of the last is the tolerance.
TEST(Ciede2000, GivesThePublishedPairsInBothOrders) {
    const std::vector<CsvRow> rows =
        published::read_csv(GRAINSIDE_MEASUREMENT_CORPUS "/ciede2000_pairs.csv", "L1,a1,b1,L2,a2,b2,dE00");
    ASSERT_EQ(rows.size(), 34U);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const CsvRow& row = rows[i];
        const Lab first{number_in(row[0]), number_in(row[1]), number_in(row[2])};
        const Lab second{number_in(row[3]), number_in(row[4]), number_in(row[5])};
        const double printed = number_in(row[6]);
        EXPECT_NEAR(difference_ciede2000(first, second), printed, 0.00005) << "pair " << i + 1;
        EXPECT_NEAR(difference_ciede2000(second, first), printed, 0.00005) << "pair " << i + 1 << ", other order";
    }
}

// Hue angles of the four half axes and the grey axis: CIE 015 (definition).
TEST(Hue, RunsFromRedOverYellow) {
    EXPECT_EQ(hue({50, 1, 0}), 0);
    EXPECT_EQ(hue({50, 0, 1}), 90);
    EXPECT_EQ(hue({50, -1, 0}), 180);
    EXPECT_EQ(hue({50, 0, -1}), 270);
    EXPECT_EQ(hue({50, 0, 0}), 0);
    EXPECT_LT(hue({50, 1, -1e-300}), 360);
    EXPECT_EQ(chroma({50, -3, 4}), 5);
}

// Mean hue: EN ISO 105-A05:1997 clause 7.2 (seen).
TEST(Hue, MeanGoesTheShorterWay) {
    EXPECT_EQ(mean_hue(10, 50), 30);
    EXPECT_EQ(mean_hue(350, 20), 5);
    EXPECT_EQ(mean_hue(5, 340), 352.5);
    EXPECT_EQ(mean_hue(350, 10), 0);  // they sum to 360: 180 is taken off
}

struct ChangeRow {
    std::string_view name;
    Lab reference;
    Lab specimen;
    double cielab;
    double weighted;  // dE_F
    double rating;    // GS
    HalfStep half_step;
};

// iso105a05-examples of the fact base: recomputed there with an independent program; the definition of dE_F is from
// memory in both. Printed to four decimals, the first row is exact.
constexpr ChangeRow kChanges[] = {
    {"lighter_grey", {50, 0, 0}, {48.3, 0, 0}, 1.7, 1.7, 4, HalfStep::grade_4},
    {"orange", {40, 20, 15}, {42, 17, 13}, 4.1231, 3.5794, 2.9258, HalfStep::grade_3},
    {"blue", {35, -5, -30}, {37, -4, -24}, 6.4031, 4.4467, 2.6128, HalfStep::grade_2_3},
    {"yellow", {60, 10, 40}, {58.5, 12, 35}, 5.5902, 4.1818, 2.7014, HalfStep::grade_2_3},
    {"over_the_red_axis", {45, 30, -3}, {45, 30, 3}, 6, 5.5, 2.3061, HalfStep::grade_2_3},
};

class ChangeInColour : public testing::TestWithParam<ChangeRow> {};

TEST_P(ChangeInColour, IsWeightedAndRated) {
    const ChangeRow& row = GetParam();
    EXPECT_NEAR(difference_cielab(row.reference, row.specimen), row.cielab, 0.00005);
    const double weighted = grey_scale_difference(row.reference, row.specimen);
    EXPECT_NEAR(weighted, row.weighted, 0.00005);
    const std::optional<double> rating = grey_scale_rating(weighted);
    ASSERT_TRUE(rating);
    EXPECT_NEAR(*rating, row.rating, 0.00005);
    EXPECT_EQ(grey_scale_half_step(weighted), row.half_step);
}

TEST_P(ChangeInColour, FallsApartIntoLightnessChromaAndHue) {
    const ChangeRow& row = GetParam();
    const double lightness = row.specimen.L - row.reference.L;
    const double chromatic = chroma(row.specimen) - chroma(row.reference);
    const double hued = hue_difference(row.reference, row.specimen);
    EXPECT_NEAR(std::hypot(lightness, chromatic, hued), row.cielab, 0.00005);
    EXPECT_EQ(hue_difference(row.specimen, row.reference), -hued);
}

INSTANTIATE_TEST_SUITE_P(Rows, ChangeInColour, testing::ValuesIn(kChanges), name_of<ChangeRow>);

struct GradeRow {
    std::string_view name;
    HalfStep grade;
    double difference;  // nominal CIELAB difference of the grey scale's pair
    double rating;      // what the formula of the other standard makes of it
};

// Differences: ISO 105-A02:1993 clause 2.4 (seen). Ratings: iso105a05-gs, formula of ISO 105-A05 clause 8 (seen).
constexpr GradeRow kChangeScale[] = {
    {"g5", HalfStep::grade_5, 0, 5},    {"g4_5", HalfStep::grade_4_5, 0.8, 4.529},
    {"g4", HalfStep::grade_4, 1.7, 4},  {"g3_4", HalfStep::grade_3_4, 2.5, 3.529},
    {"g3", HalfStep::grade_3, 3.4, 3},  {"g2_3", HalfStep::grade_2_3, 4.8, 2.503},
    {"g2", HalfStep::grade_2, 6.8, 2},  {"g1_2", HalfStep::grade_1_2, 9.6, 1.503},
    {"g1", HalfStep::grade_1, 13.6, 1},
};

class ChangeScale : public testing::TestWithParam<GradeRow> {};

// Two standards that know nothing of each other's numbers: the scale's own differences must come out as its grades.
TEST_P(ChangeScale, IsFoundByTheFormulaAndTheTable) {
    const GradeRow& row = GetParam();
    const std::optional<double> rating = grey_scale_rating(row.difference);
    ASSERT_TRUE(rating);
    EXPECT_NEAR(*rating, row.rating, 0.0005);
    EXPECT_NEAR(*rating, half_step_value(row.grade), 0.03);
    EXPECT_EQ(grey_scale_half_step(row.difference), row.grade);
}

INSTANTIATE_TEST_SUITE_P(Rows, ChangeScale, testing::ValuesIn(kChangeScale), name_of<GradeRow>);

// The table of ISO 105-A05 is from memory; that its limits lie midway between the differences of ISO 105-A02 (seen)
// speaks for it.
TEST(ChangeScale, TableChangesMidwayBetweenTheNominalDifferences) {
    for (std::size_t i = 1; i < std::size(kChangeScale); ++i) {
        const double limit = (kChangeScale[i - 1].difference + kChangeScale[i].difference) / 2;
        EXPECT_EQ(grey_scale_half_step(limit - 1e-9), kChangeScale[i - 1].grade) << limit;
        EXPECT_EQ(grey_scale_half_step(limit + 1e-9), kChangeScale[i].grade) << limit;
    }
}

// iso105a05-table: the table and the rounded rating disagree in thin bands (recomputed); the table is what we report.
TEST(ChangeScale, TableWinsOverRounding) {
    for (const double difference : {0.41, 4.07}) {
        const std::optional<HalfStep> step = grey_scale_half_step(difference);
        const std::optional<double> rating = grey_scale_rating(difference);
        ASSERT_TRUE(step && rating);
        EXPECT_EQ(std::fabs(half_step_value(*step) - std::round(*rating * 2) / 2), 0.5) << difference;
    }
    EXPECT_EQ(grey_scale_half_step(0.40), HalfStep::grade_4_5);  // a limit belongs to the worse grade
    EXPECT_EQ(grey_scale_half_step(11.6), HalfStep::grade_1);
}

TEST(ChangeScale, RefusesWhatIsNoDifference) {
    EXPECT_FALSE(grey_scale_rating(-0.1));
    EXPECT_FALSE(grey_scale_rating(kNan));
    EXPECT_FALSE(grey_scale_half_step(-0.1));
    EXPECT_FALSE(grey_scale_rating(Measured{.value = 1, .u = -0.1}));
    EXPECT_EQ(grey_scale_rating(40), 1);
}

// First-order propagation (GUM 5.1.3): the slopes are those of the formula, taken here by small steps.
TEST(ChangeScale, UncertaintyFollowsTheSlope) {
    for (const double difference : {0.5, 1.7, 3.3, 3.5, 6.8, 12.0}) {
        const std::optional<Measured> rating = grey_scale_rating(Measured{.value = difference, .u = 0.1, .dof = 9});
        const std::optional<double> above = grey_scale_rating(difference + 1e-5);
        const std::optional<double> below = grey_scale_rating(difference - 1e-5);
        ASSERT_TRUE(rating && above && below);
        EXPECT_NEAR(rating->u, 0.1 * (*below - *above) / 2e-5, 1e-8) << difference;
        EXPECT_EQ(rating->dof, 9);
    }
    const std::optional<Measured> at_the_end = grey_scale_rating(Measured{.value = 20, .u = 1});
    ASSERT_TRUE(at_the_end);
    EXPECT_EQ(at_the_end->value, 1);
    EXPECT_GT(at_the_end->u, 0);
}

TEST(HalfSteps, AreNamedAsReportsWriteThem) {
    std::string all;
    for (const GradeRow& row : kChangeScale) all += std::string(half_step_text(row.grade)) + ' ';
    EXPECT_EQ(all, "5 4-5 4 3-4 3 2-3 2 1-2 1 ");
}

// Differences: ISO 105-A03 (from memory). Ratings: iso105a04-ssr, formulas of ISO 105-A04 (from memory), recomputed for
// 12.0 and 24.0, which the fact base leaves out. The last would be 0.983 and is kept at 1.
constexpr GradeRow kStainScale[] = {
    {"g5", HalfStep::grade_5, 0, 5},       {"g4_5", HalfStep::grade_4_5, 2.2, 4.494},
    {"g4", HalfStep::grade_4, 4.3, 4.011}, {"g3_4", HalfStep::grade_3_4, 6.0, 3.502},
    {"g3", HalfStep::grade_3, 8.5, 2.997}, {"g2_3", HalfStep::grade_2_3, 12.0, 2.497},
    {"g2", HalfStep::grade_2, 16.9, 2.0},  {"g1_2", HalfStep::grade_1_2, 24.0, 1.492},
    {"g1", HalfStep::grade_1, 34.1, 1},
};

class StainScale : public testing::TestWithParam<GradeRow> {};

TEST_P(StainScale, IsFoundByTheFormulaAndTheBands) {
    const GradeRow& row = GetParam();
    const std::optional<double> rating = staining_rating(row.difference);
    ASSERT_TRUE(rating);
    EXPECT_NEAR(*rating, row.rating, 0.0006);
    EXPECT_EQ(staining_half_step(*rating), row.grade);
}

INSTANTIATE_TEST_SUITE_P(Rows, StainScale, testing::ValuesIn(kStainScale), name_of<GradeRow>);

struct BandRow {
    std::string_view name;
    double rating;
    HalfStep grade;
};

// The first and last rating of every band: EN ISO 105-A04:1999 (seen).
constexpr BandRow kBands[] = {
    {"g5_last", 5.00, HalfStep::grade_5},     {"g5_first", 4.75, HalfStep::grade_5},
    {"g4_5_last", 4.74, HalfStep::grade_4_5}, {"g4_5_first", 4.25, HalfStep::grade_4_5},
    {"g4_last", 4.24, HalfStep::grade_4},     {"g4_first", 3.75, HalfStep::grade_4},
    {"g3_4_last", 3.74, HalfStep::grade_3_4}, {"g3_4_first", 3.25, HalfStep::grade_3_4},
    {"g3_last", 3.24, HalfStep::grade_3},     {"g3_first", 2.75, HalfStep::grade_3},
    {"g2_3_last", 2.74, HalfStep::grade_2_3}, {"g2_3_first", 2.25, HalfStep::grade_2_3},
    {"g2_last", 2.24, HalfStep::grade_2},     {"g2_first", 1.75, HalfStep::grade_2},
    {"g1_2_last", 1.74, HalfStep::grade_1_2}, {"g1_2_first", 1.25, HalfStep::grade_1_2},
    {"g1_last", 1.24, HalfStep::grade_1},     {"g1_worst", 1.00, HalfStep::grade_1},
};

class StainBand : public testing::TestWithParam<BandRow> {};

TEST_P(StainBand, HoldsItsEnds) {
    EXPECT_EQ(staining_half_step(GetParam().rating), GetParam().grade);
}

INSTANTIATE_TEST_SUITE_P(Rows, StainBand, testing::ValuesIn(kBands), name_of<BandRow>);

// dE_GS = dE - 0.4 sqrt(dE^2 - dL^2): EN ISO 105-A04:1999 (seen). dE 13, dL 5 leave 12 of chroma and hue.
TEST(Staining, WeighsColourLessThanLightness) {
    EXPECT_DOUBLE_EQ(staining_difference({90, 0, 0}, {85, 12, 0}), 13 - 0.4 * 12);
    EXPECT_DOUBLE_EQ(staining_difference({90, 0, 0}, {85, 0, 0}), 5);
    EXPECT_FALSE(staining_rating(-1));
    EXPECT_FALSE(staining_half_step(5.1));
    EXPECT_FALSE(staining_half_step(kNan));
    const std::optional<Measured> rating = staining_rating(Measured{.value = 8.5, .u = 0.5});
    ASSERT_TRUE(rating);
    EXPECT_DOUBLE_EQ(rating->u, 1.45 * 0.5 / 8.5);  // the slope of 6.1 - 1.45 ln d
}

}  // namespace
}  // namespace grainside::measure
