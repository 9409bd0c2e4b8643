// Factors from outside: SI brochure (9th ed., 2019), 8; international yard and pound agreement (1959): inch 25.4 mm,
// yard 0.9144 m, pound 0.45359237 kg; leather ounce and iron: trade usage, 1/64 and 1/48 inch; Celsius and Fahrenheit
// scales: SI brochure 2.3.1 and NIST SP 811 (2008), B.8.
#include "measure/unit.h"

#include <gtest/gtest.h>

#include <set>
#include <string>
#include <string_view>

namespace grainside::measure {
namespace {

struct Row {
    std::string_view name, text;
    Dimension dimension;
    double of_one;  // what 1 of the unit is in the working unit
};

constexpr Row kRows[] = {
    {"plain_number", "", Dimension::number, 1},
    {"percent", "%", Dimension::share, 1},
    {"percent_in_two_words", "per cent", Dimension::share, 1},
    {"mg_per_kg", "mg/kg", Dimension::share, 1e-4},
    {"ppm", "ppm", Dimension::share, 1e-4},
    {"ppb", "ppb", Dimension::share, 1e-7},
    {"per_mille_sign", "\xE2\x80\xB0", Dimension::share, 0.1},
    {"per_mille_words", "per mille", Dimension::share, 0.1},
    {"ng_per_kg", "ng/kg", Dimension::share, 1e-10},
    {"millimetre", "mm", Dimension::length, 1},
    {"micro_sign", "\xC2\xB5m", Dimension::length, 1e-3},
    {"greek_mu", "\xCE\xBCm", Dimension::length, 1e-3},
    {"um", "um", Dimension::length, 1e-3},
    {"microns", "microns", Dimension::length, 1e-3},
    {"capital_word", "Micron", Dimension::length, 1e-3},
    {"cm", "cm", Dimension::length, 10},
    {"metre", "m", Dimension::length, 1000},
    {"inch", "in", Dimension::length, 25.4},
    {"inch_with_full_stop", "in.", Dimension::length, 25.4},
    {"inch_mark", "\"", Dimension::length, 25.4},
    {"double_prime", "\xE2\x80\xB3", Dimension::length, 25.4},
    {"inches", "Inches", Dimension::length, 25.4},
    {"mil", "mil", Dimension::length, 0.0254},
    {"microinch", "microinch", Dimension::length, 2.54e-5},
    {"microinch_sign", "\xC2\xB5in", Dimension::length, 2.54e-5},
    {"leather_ounce", "oz", Dimension::length, 0.396875},
    {"iron", "iron", Dimension::length, 0.52916666666666667},
    {"gram", "g", Dimension::mass, 1},
    {"milligram", "mg", Dimension::mass, 1e-3},
    {"kilogram", "kg", Dimension::mass, 1000},
    {"density_plain", "g/cm3", Dimension::density, 1},
    {"density_raised", "g/cm\xC2\xB3", Dimension::density, 1},
    {"density_caret_and_spaces", "g / cm^3", Dimension::density, 1},
    {"density_si", "kg/m3", Dimension::density, 1e-3},
    {"celsius",
     "\xC2\xB0"
     "C",
     Dimension::temperature, 1},
    {"celsius_bare", "C", Dimension::temperature, 1},
    {"kelvin", "K", Dimension::temperature, -272.15},
    {"fahrenheit",
     "\xC2\xB0"
     "F",
     Dimension::temperature, -155.0 / 9},
    {"hour", "h", Dimension::time, 1},
    {"second", "s", Dimension::time, 1.0 / 3600},
    {"minute", "min", Dimension::time, 1.0 / 60},
    {"day", "d", Dimension::time, 24},
    {"days", "days", Dimension::time, 24},
    {"week", "week", Dimension::time, 168},
    {"month", "month", Dimension::time, 730.5},
    {"months", "months", Dimension::time, 730.5},
    {"year", "year", Dimension::time, 8766},
    {"release_raised", "\xC2\xB5g/cm\xC2\xB2/week", Dimension::release_rate, 1},
    {"release_plain", "ug/cm2/week", Dimension::release_rate, 1},
    {"n_per_cm", "N/cm", Dimension::force_per_width, 1},
    {"n_per_mm", "N/mm", Dimension::force_per_width, 10},
    {"newton", "N", Dimension::force, 1},
    {"pound_force", "lbf", Dimension::force, 4.4482216152605},
    {"millinewton", "mN", Dimension::force, 1e-3},
    {"kilonewton", "kN", Dimension::force, 1000},
    // Third General Conference on Weights and Measures (1901): 9.80665 m/s2.
    {"kilogram_force", "kgf", Dimension::force, 9.80665},
    {"n_per_m", "N/m", Dimension::force_per_width, 0.01},
    {"release_in_milligrams", "mg/cm2/week", Dimension::release_rate, 1000},
    {"microgram", "ug", Dimension::mass, 1e-6},
    {"nanometre", "nm", Dimension::length, 1e-6},
    {"kilogram_per_square_metre", "kg/m2", Dimension::mass_per_area, 1000},
    {"milligram_per_square_centimetre", "mg/cm2", Dimension::mass_per_area, 10},
    {"gsm", "gsm", Dimension::mass_per_area, 1},
    {"gram_per_square_metre", "g/m\xC2\xB2", Dimension::mass_per_area, 1},
    {"ounce_per_square_yard", "oz/yd2", Dimension::mass_per_area, 33.9057475},
    // A foot is 0.3048 m by the agreement of 1959, so that a square foot is 3.048 dm squared.
    {"foot", "ft", Dimension::length, 304.8},
    {"yards", "Yards", Dimension::length, 914.4},
    {"pound", "lb", Dimension::mass, 453.59237},
    {"square_decimetre", "dm2", Dimension::area, 1},
    {"square_centimetre_raised", "cm\xC2\xB2", Dimension::area, 0.01},
    {"square_metre", "m^2", Dimension::area, 100},
    {"square_foot", "sq ft", Dimension::area, 9.290304},
    {"square_foot_with_full_stops", "sq. ft.", Dimension::area, 9.290304},
    {"square_foot_raised", "ft\xC2\xB2", Dimension::area, 9.290304},
    {"square_feet", "Square Feet", Dimension::area, 9.290304},
    {"square_inch", "sq in", Dimension::area, 0.064516},
    {"square_yard", "sq yd", Dimension::area, 83.612736},
    {"hide", "hide", Dimension::hides, 1},
    {"side", "side", Dimension::hides, 0.5},
};

class UnitTest : public testing::TestWithParam<Row> {};

TEST_P(UnitTest, IsFoundAndConverted) {
    const Row& row = GetParam();
    const UnitInfo* const unit = find_unit(row.text);
    ASSERT_NE(unit, nullptr);
    EXPECT_EQ(name_of(unit->dimension), name_of(row.dimension));
    EXPECT_NEAR(to_working(1, *unit), row.of_one, std::abs(row.of_one) * 1e-8);
    EXPECT_NEAR(from_working(to_working(3.25, *unit), *unit), 3.25, 1e-12);
}

INSTANTIATE_TEST_SUITE_P(Rows, UnitTest, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

// A symbol in the wrong case is another unit, or none; "ppt" is two.
TEST(FindUnit, RefusesWhatIsNoUnit) {
    for (const std::string_view text : {"Mg", "KG", "MM", "G/CM3", "MG/KG", "furlong", "ppt", "mm2", "5mm", "\xC2\xB5",
                                        "m\xC3\xA9tre", "\xC2", "g/", "/", "..", "o z z"}) {
        EXPECT_EQ(find_unit(text), nullptr) << text;
    }
}

TEST(UnitNames, BeginWithTheWorkingUnitAndAreAllReadable) {
    std::set<std::string_view> dimensions;
    for (std::size_t i = 0; i < kDimensionCount; ++i) {
        const auto dimension = static_cast<Dimension>(i);
        dimensions.insert(name_of(dimension));
        const UnitInfo& working = working_unit(dimension);
        EXPECT_EQ(working.factor, 1);
        EXPECT_EQ(working.offset, 0);
        ASSERT_EQ(unit_names(dimension).front(), working.name);
        for (const std::string_view name : unit_names(dimension)) {
            const UnitInfo* const unit = find_unit(name);
            ASSERT_NE(unit, nullptr) << name;
            EXPECT_EQ(unit->name, name);
            EXPECT_EQ(unit->dimension, dimension);
        }
    }
    EXPECT_EQ(dimensions.size(), kDimensionCount);
    EXPECT_FALSE(dimensions.contains(""));
}

}  // namespace
}  // namespace grainside::measure
