// Our functions against those of general-purpose packages of other people (second_opinion/README.md).
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "csv_file.h"
#include "measure/blurred_range.h"
#include "measure/colour_difference.h"
#include "measure/distribution.h"

namespace grainside::measure {
namespace {

using published::CsvRow;
using published::number_in;

// Nine decimals are written, so half a unit of the last and a little rounding.
constexpr double kNineDecimals = 1e-9;

TEST(SecondOpinion, OnColourDifferences) {
    const std::vector<CsvRow> rows =
        published::read_csv(GRAINSIDE_SECOND_OPINION "/colour_reference.csv", "L1,a1,b1,L2,a2,b2,cielab,ciede2000");
    ASSERT_EQ(rows.size(), 200U);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const CsvRow& row = rows[i];
        const Lab first{number_in(row[0]), number_in(row[1]), number_in(row[2])};
        const Lab second{number_in(row[3]), number_in(row[4]), number_in(row[5])};
        EXPECT_NEAR(difference_cielab(first, second), number_in(row[6]), kNineDecimals) << "pair " << i + 1;
        EXPECT_NEAR(difference_ciede2000(first, second), number_in(row[7]), kNineDecimals) << "pair " << i + 1;
    }
}

// How well the package does was checked with 30 digits: its normal probabilities are right to 1e-10, those of t to 2e-8
// (it gives 0.500000018 at 0), its quantiles of t to 6e-8. The tolerances are the package's.
TEST(SecondOpinion, OnNormalAndStudentProbabilities) {
    const std::vector<CsvRow> rows =
        published::read_csv(GRAINSIDE_SECOND_OPINION "/statistics_reference.csv", "function,argument,dof,value");
    ASSERT_EQ(rows.size(), 332U);
    for (const CsvRow& row : rows) {
        const double argument = number_in(row[1]);
        const double dof = number_in(row[2]);
        const double value = number_in(row[3]);
        SCOPED_TRACE(row[0] + " at " + row[1] + ", dof " + row[2]);
        if (row[0] == "normal_below" || row[0] == "student_below") {
            const double tolerance = row[0] == "normal_below" ? 1e-10 : 2e-8;
            EXPECT_NEAR(probability_below(argument, dof), value, tolerance);
            EXPECT_NEAR(probability_above(-argument, dof), value, tolerance);
        } else {
            ASSERT_EQ(row[0], "two_sided_quantile");
            EXPECT_NEAR(two_sided_quantile(argument, dof), value, 1e-7 * std::max(1.0, value));
        }
    }
}

TEST(SecondOpinion, OnRangesUnderNoise) {
    const std::vector<CsvRow> rows =
        published::read_csv(GRAINSIDE_SECOND_OPINION "/range_reference.csv", "x,u,low,high,probability");
    ASSERT_EQ(rows.size(), 180U);
    for (const CsvRow& row : rows) {
        const Measured reading{.value = number_in(row[0]), .u = number_in(row[1])};
        const Range range{number_in(row[2]), number_in(row[3])};
        const double value = number_in(row[4]);
        SCOPED_TRACE(row[0] + " in " + row[2] + " to " + row[3] + ", u " + row[1]);
        EXPECT_NEAR(std::exp(*log_probability(reading, range)), value, 1e-10);
        EXPECT_NEAR(std::exp(*log_likelihood(reading, range)) * (range.high - range.low), value, 1e-10);
    }
}

}  // namespace
}  // namespace grainside::measure
