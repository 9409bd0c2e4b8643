// Forms and their uncertainties: JCGM 100:2008, 4.3.7 (range), 7.2.2 (concise forms), 7.2.4 (expanded), 7.2.6
// (rounding); the arithmetic beside each row is by hand. That a plus-minus means k = 2 is a rule of ours
// (quantity_text.h).
#include "measure/quantity_text.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <set>
#include <string>
#include <string_view>
#include <variant>

namespace grainside::measure {
namespace {

std::string dump(const QuantityOrFault& result) {
    if (const auto* const fault = std::get_if<QuantityFault>(&result)) {
        return fmt::format("{}: {} ({})", fault->code, fault->message, fault->hint);
    }
    const auto& quantity = std::get<ParsedQuantity>(result);
    return fmt::format("{:.6g} u {:.6g} dof {:.6g} {} {}{}{}{}", quantity.measured.value, quantity.measured.u,
                       quantity.measured.dof, name_of(quantity.distribution), quantity.unit->name,
                       quantity.states_uncertainty ? "" : " bare", quantity.exact ? " exact" : "",
                       quantity.below_detection ? " below" : "");
}

struct Row {
    std::string_view name, text;
    Dimension dimension;
    std::string_view want;
};

constexpr auto kNumber = Dimension::number;
constexpr auto kShare = Dimension::share;
constexpr auto kLength = Dimension::length;
constexpr auto kTime = Dimension::time;
constexpr auto kTemperature = Dimension::temperature;

constexpr Row kRead[] = {
    {"bare", "0.21 mm", kLength, "0.21 u 0 dof inf normal mm bare"},
    {"bare_touching", "0.21mm", kLength, "0.21 u 0 dof inf normal mm bare"},
    {"bare_number", "4.5", kNumber, "4.5 u 0 dof inf normal  bare"},
    {"bare_with_spaces", "  0.21   mm  ", kLength, "0.21 u 0 dof inf normal mm bare"},
    {"no_leading_zero", ".21 mm", kLength, "0.21 u 0 dof inf normal mm bare"},
    {"exponent", "2.1e-4 m", kLength, "0.21 u 0 dof inf normal m bare"},
    {"exponent_touching_unit", "2.1E-4m", kLength, "0.21 u 0 dof inf normal m bare"},
    {"converted", "210 \xC2\xB5m", kLength, "0.21 u 0 dof inf normal \xC2\xB5m bare"},
    {"leather_ounces", "4 oz", kLength, "1.5875 u 0 dof inf normal oz bare"},
    {"inches_abbreviated", "0.5 in.", kLength, "12.7 u 0 dof inf normal in bare"},
    {"unit_of_two_words", "925 per mille", kShare, "92.5 u 0 dof inf normal \xE2\x80\xB0 bare"},
    {"negative_temperature",
     "-4 \xC2\xB0"
     "C",
     kTemperature,
     "-4 u 0 dof inf normal \xC2\xB0"
     "C bare"},
    {"kelvin", "293.15 K", kTemperature, "20 u 0 dof inf normal K bare"},
    {"in_brackets", "(0.21) mm", kLength, "0.21 u 0 dof inf normal mm bare"},

    // u = 0.02 / 2
    {"plus_minus", "0.21 \xC2\xB1 0.02 mm", kLength, "0.21 u 0.01 dof inf normal mm"},
    {"plus_minus_typed", "0.21 +- 0.02 mm", kLength, "0.21 u 0.01 dof inf normal mm"},
    {"plus_minus_slash", "0.21 +/- 0.02 mm", kLength, "0.21 u 0.01 dof inf normal mm"},
    {"plus_minus_touching",
     "0.21\xC2\xB1"
     "0.02mm",
     kLength, "0.21 u 0.01 dof inf normal mm"},
    {"plus_minus_two_units", "0.21 mm \xC2\xB1 20 \xC2\xB5m", kLength, "0.21 u 0.01 dof inf normal mm"},
    {"plus_minus_unit_first", "0.21 mm \xC2\xB1 0.02", kLength, "0.21 u 0.01 dof inf normal mm"},
    {"plus_minus_brackets", "(0.21 \xC2\xB1 0.02) mm", kLength, "0.21 u 0.01 dof inf normal mm"},
    {"plus_minus_number", "4.5 +- 0.5", kNumber, "4.5 u 0.25 dof inf normal "},
    {"plus_minus_kelvin", "293.15 +- 0.5 K", kTemperature, "20 u 0.25 dof inf normal K"},
    {"k_one", "0.21 +- 0.02 mm (k=1)", kLength, "0.21 u 0.02 dof inf normal mm"},
    {"k_two", "0.21 +- 0.02 mm (k=2)", kLength, "0.21 u 0.01 dof inf normal mm"},
    {"k_least", "0.21 +- 0.02 mm (k=0.5)", kLength, "0.21 u 0.04 dof inf normal mm"},
    {"k_most", "0.21 +- 0.02 mm (k=20)", kLength, "0.21 u 0.001 dof inf normal mm"},
    {"k_three", "0.21 +- 0.03 mm (k=3)", kLength, "0.21 u 0.01 dof inf normal mm"},
    {"k_of_a_certificate", "0.21 +- 0.0196 mm, k = 1.96", kLength, "0.21 u 0.01 dof inf normal mm"},
    {"k_before_the_unit", "0.21 +- 0.02 (k=1) mm", kLength, "0.21 u 0.02 dof inf normal mm"},
    {"k_after_brackets", "(0.21 +- 0.02) mm (k=1)", kLength, "0.21 u 0.02 dof inf normal mm"},
    {"standard_s", "0.21 +- 0.02 mm (s)", kLength, "0.21 u 0.02 dof inf normal mm"},
    {"standard_u", "0.21 +- 0.02 mm (u)", kLength, "0.21 u 0.02 dof inf normal mm"},
    {"relative", "0.21 mm +- 10 %", kLength, "0.21 u 0.0105 dof inf normal mm"},
    {"relative_of_a_negative", "-4 +- 10 %", kNumber, "-4 u 0.2 dof inf normal "},
    {"relative_standard", "0.21 mm +- 10 % (s)", kLength, "0.21 u 0.021 dof inf normal mm"},
    {"percentage_points", "5 % +- 1 %", kShare, "5 u 0.5 dof inf normal %"},
    {"percentage_points_once", "5 +- 1 %", kShare, "5 u 0.5 dof inf normal %"},
    {"share_of_a_share", "50 mg/kg +- 10 %", kShare, "0.005 u 0.00025 dof inf normal mg/kg"},

    {"concise", "0.21(2) mm", kLength, "0.21 u 0.02 dof inf normal mm"},
    {"concise_two_digits", "0.214(12) mm", kLength, "0.214 u 0.012 dof inf normal mm"},
    {"concise_whole", "214(12) um", kLength, "0.214 u 0.012 dof inf normal \xC2\xB5m"},
    {"concise_exponent", "2.14(12)e-4 m", kLength, "0.214 u 0.012 dof inf normal m"},
    // JCGM 100:2008, 7.2.2, forms 2 and 3.
    {"gum_form_two", "100.021 47(35) g", Dimension::mass, "malformed"},
    {"gum_form_two_closed_up", "100.02147(35) g", Dimension::mass, "100.021 u 0.00035 dof inf normal g"},
    {"gum_form_three", "100.02147(0.00035) g", Dimension::mass, "100.021 u 0.00035 dof inf normal g"},

    // Half width 0.1, over sqrt 3: 0.0577350.
    {"range", "1.2-1.4 mm", kLength, "1.3 u 0.057735 dof inf rectangular mm"},
    {"range_en_dash",
     "1.2\xE2\x80\x93"
     "1.4 mm",
     kLength, "1.3 u 0.057735 dof inf rectangular mm"},
    {"range_words", "1.2 to 1.4 mm", kLength, "1.3 u 0.057735 dof inf rectangular mm"},
    {"range_two_units", "1.2 mm to 1400 \xC2\xB5m", kLength, "1.3 u 0.057735 dof inf rectangular mm"},
    {"range_touching", "1.2mm-1.4mm", kLength, "1.3 u 0.057735 dof inf rectangular mm"},
    {"range_of_negatives", "-4 - -2 C", kTemperature,
     "-3 u 0.57735 dof inf rectangular \xC2\xB0"
     "C"},
    {"range_of_grades", "3-4", kNumber, "3.5 u 0.288675 dof inf rectangular "},
    {"range_of_months", "6 to 8 months", kTime, "5113.5 u 421.754 dof inf rectangular months"},

    // s = 0.01, over sqrt 3: 0.00577350.
    {"repeats", "0.20, 0.22, 0.21 mm", kLength, "0.21 u 0.0057735 dof 2 student-t mm"},
    {"repeats_semicolons", "0.20; 0.22; 0.21 mm", kLength, "0.21 u 0.0057735 dof 2 student-t mm"},
    {"repeats_own_units", "0.20 mm, 220 um, 0.21 mm", kLength, "0.21 u 0.0057735 dof 2 student-t mm"},
    {"repeats_unit_first", "0.20 mm, 0.22, 0.21", kLength, "0.21 u 0.0057735 dof 2 student-t mm"},
    {"repeats_of_temperature", "19.9, 20.1, 20.0 C", kTemperature,
     "20 u 0.057735 dof 2 student-t \xC2\xB0"
     "C"},
    // Nothing but the resolution of 0.01: over sqrt 12, 0.00288675.
    {"repeats_all_the_same", "0.21, 0.21, 0.21 mm", kLength, "0.21 u 0.00288675 dof inf normal mm"},

    {"exactly", "exactly 5 mm", kLength, "5 u 0 dof inf normal mm exact"},
    {"equals", "= 5 mm", kLength, "5 u 0 dof inf normal mm exact"},
    // 0 to 0.005: half of it, and 0.0025 / sqrt 3 = 0.00144338.
    {"below", "< 0.005 %", kShare, "0.0025 u 0.00144338 dof inf rectangular % below"},
    {"at_most", "\xE2\x89\xA4 50 mg/kg", kShare, "0.0025 u 0.00144338 dof inf rectangular mg/kg below"},

    {"nothing", "", kLength, "empty"},
    {"blank", "  \t ", kLength, "empty"},
    {"no_number", "thin", kLength, "malformed"},
    {"lone_sign", "-", kLength, "malformed"},
    {"lone_point", ". mm", kLength, "malformed"},
    {"no_fraction", "5. mm", kLength, "unknown-unit"},
    {"two_numbers", "0.21 0.22 mm", kLength, "malformed"},
    {"garbage_behind", "0.21 mm !", kLength, "malformed"},
    {"approximately", "~0.21 mm", kLength, "malformed"},
    {"infinity", "inf mm", kLength, "malformed"},
    {"no_number_nan", "nan", kNumber, "malformed"},
    {"hexadecimal", "0x10 mm", kLength, "unknown-unit"},
    {"sign_twice", "--5 mm", kLength, "malformed"},
    {"control", "0.21\x1B mm", kLength, "malformed"},
    {"open_bracket", "0.21(2 mm", kLength, "malformed"},
    {"empty_bracket", "0.21() mm", kLength, "malformed"},
    {"concise_and_plus_minus", "0.21(2) +- 0.02 mm", kLength, "malformed"},
    {"exactly_with_uncertainty", "exactly 5 +- 1 mm", kLength, "malformed"},
    {"plus_minus_nothing", "0.21 +- mm", kLength, "malformed"},
    {"range_of_three", "1-2-3 mm", kLength, "malformed"},
    {"repeats_with_a_hole", "0.20,, 0.21 mm", kLength, "malformed"},
    {"repeats_trailing_comma", "0.20, 0.21, 0.22 mm,", kLength, "malformed"},
    {"raised_digit", "5\xC2\xB2 mm", kLength, "unknown-unit"},
    {"coverage_garbage", "0.21 +- 0.02 mm (j=2)", kLength, "malformed"},

    {"decimal_comma", "0,21 mm", kLength, "decimal-comma"},
    {"thousands_comma", "1,200 \xC2\xB5m", kLength, "decimal-comma"},
    {"repeats_without_spaces", "0.20,0.22,0.21 mm", kLength, "decimal-comma"},
    {"decimal_comma_in_uncertainty", "0.21 +- 0,02 mm", kLength, "decimal-comma"},
    {"two_repeats", "0.20, 0.22 mm", kLength, "too-few-repeats"},
    {"open_ended", "> 5 h", kTime, "open-ended"},
    {"at_least", ">= 5 h", kTime, "open-ended"},
    {"missing_unit", "0.21", kLength, "missing-unit"},
    {"missing_unit_relative", "0.21 +- 10 %", kLength, "missing-unit"},
    {"unknown_unit", "0.21 furlong", kLength, "unknown-unit"},
    {"unit_that_begins_like_a_range", "1.2 tonnes", Dimension::mass, "unknown-unit"},
    {"unit_of_a_range_and_a_letter", "1.2 ton", Dimension::mass, "unknown-unit"},
    {"parts_per_what", "5 ppt", kShare, "unknown-unit"},
    {"wrong_unit", "0.21 g", kLength, "wrong-unit"},
    {"wrong_unit_of_uncertainty", "0.21 mm +- 0.02 g", kLength, "wrong-unit"},
    {"unit_on_a_number", "4.5 mm", kNumber, "wrong-unit"},
    {"percent_of_a_temperature", "20 C +- 5 %", kTemperature, "wrong-unit"},
    {"mixed_units", "0.20 mm, 0.22 mm, 0.21", kLength, "mixed-units"},
    {"negative_uncertainty", "0.21 +- -0.02 mm", kLength, "bad-uncertainty"},
    {"zero_uncertainty", "0.21 +- 0 mm", kLength, "bad-uncertainty"},
    {"zero_concise", "0.21(0) mm", kLength, "bad-uncertainty"},
    {"relative_of_zero", "0 mm +- 10 %", kLength, "bad-uncertainty"},
    {"coverage_below_the_least", "0.21 +- 0.02 mm (k=0.4)", kLength, "bad-uncertainty"},
    {"coverage_above_the_most", "0.21 +- 0.02 mm (k=21)", kLength, "bad-uncertainty"},
    {"coverage_zero", "0.21 +- 0.02 mm (k=0)", kLength, "bad-uncertainty"},
    {"coverage_huge", "0.21 +- 0.02 mm (k=1000)", kLength, "bad-uncertainty"},
    {"range_reversed", "1.4-1.2 mm", kLength, "range-reversed"},
    {"range_without_width", "1.4-1.4 mm", kLength, "range-reversed"},
    {"below_zero", "< 0 %", kShare, "not-positive"},
    {"below_a_negative", "< -1 %", kShare, "not-positive"},
    {"below_a_temperature", "< 5 C", kTemperature, "not-positive"},
    {"too_large", "1e999 mm", kLength, "out-of-range"},
    {"too_large_after_conversion", "1e308 m", kLength, "out-of-range"},
    {"too_small", "1e-999 mm", kLength, "out-of-range"},
    {"too_small_for_all_digits", "1e-320 mm", kLength, "out-of-range"},
    {"too_small_after_conversion", "1e-307 um", kLength, "out-of-range"},
    {"uncertainty_too_small", "1e-300 mm +- 1e-8 %", kLength, "out-of-range"},
    {"exponent_beyond_counting", "0e99999999999 mm", kLength, "out-of-range"},
    {"exponent_beyond_any_double", "0e2000 mm", kLength, "out-of-range"},
    {"concise_too_large", "1(2000000000)e305 mm", kLength, "out-of-range"},
    {"spread_too_large", "-1e308, 1e308, 1e308", kNumber, "out-of-range"},
    {"range_nearly_too_large", "-1.6e308 to 1.6e308", kNumber, "0 u 9.2376e+307 dof inf rectangular "},
};

class QuantityText : public testing::TestWithParam<Row> {};

TEST_P(QuantityText, IsReadAsItSays) {
    const QuantityOrFault result = parse_quantity(GetParam().text, GetParam().dimension);
    const auto* const fault = std::get_if<QuantityFault>(&result);
    if (fault == nullptr) {
        EXPECT_EQ(dump(result), GetParam().want);
    } else {
        EXPECT_EQ(fault->code, GetParam().want) << dump(result);
        EXPECT_FALSE(fault->message.empty());
    }
}

INSTANTIATE_TEST_SUITE_P(Rows, QuantityText, testing::ValuesIn(kRead),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(QuantityFaults, SayWhatToWrite) {
    EXPECT_EQ(dump(parse_quantity("0,21 mm", kLength)),
              "decimal-comma: the comma in `0,21 mm` may be a decimal comma or stand between repeats (write `0.21` for "
              "one number, `0, 21` for two)");
    EXPECT_EQ(
        dump(parse_quantity("1,200 mm", kLength)),
        "decimal-comma: the comma in `1,200 mm` may be a decimal comma or part thousands or stand between repeats "
        "(write `1.200` for a decimal comma, `1200` for thousands, `1, 200` for two)");
    EXPECT_EQ(dump(parse_quantity("0.20,0.22 mm", kLength)),
              "decimal-comma: the comma in `0.20,0.22 mm` may stand between repeats (write `0.20, 0.22` for two)");
    EXPECT_EQ(dump(parse_quantity("0,210 mm", kLength)),
              "decimal-comma: the comma in `0,210 mm` may be a decimal comma or stand between repeats (write `0.210` "
              "for one number, `0, 210` for two)");
    EXPECT_EQ(dump(parse_quantity("5 mm", Dimension::area)).substr(0, 62),
              "wrong-unit: `mm` is a unit of length, where an area is wanted ");
    EXPECT_EQ(dump(parse_quantity("5 g", kTime)),
              "wrong-unit: `g` is a unit of mass, where a time is wanted (one of h, s, min, d, weeks, months, years)");
    EXPECT_EQ(dump(parse_quantity("5", Dimension::force)),
              "missing-unit: `5` has no unit, and a force needs one (one of N, mN, kN, kgf, lbf)");
    EXPECT_EQ(dump(parse_quantity("5 wekks", kTime)),
              "unknown-unit: the unit `wekks` in `5 wekks` is not known (did you mean `weeks`?)");
    EXPECT_EQ(dump(parse_quantity("5 mm", kNumber)),
              "wrong-unit: `mm` is a unit of length, where a number is wanted (a plain number has no unit)");
    EXPECT_EQ(dump(parse_quantity("> 5 h", kTime)),
              "open-ended: `> 5 h` has no upper end, so it has neither a value nor an uncertainty (write the range it "
              "lies in, such as `5-8 h`)");
    EXPECT_EQ(dump(parse_quantity("thin", kLength)),
              "malformed: `thin` is not a quantity (write it as `0.21 mm`, `0.21 \xC2\xB1 0.02 mm` or `0.20-0.22 mm`)");
}

TEST(QuantityFaults, ShowNoControlCharacter) {
    const QuantityOrFault result = parse_quantity("5 \x1B[31m", kLength);
    EXPECT_EQ(dump(result).find('\x1B'), std::string::npos);
}

TEST(QuantityLimits, AreFourHundredBytes) {
    const std::string longest = "0.21" + std::string(kMaxQuantityBytes - 6, ' ') + "mm";
    EXPECT_TRUE(std::holds_alternative<ParsedQuantity>(parse_quantity(longest, kLength)));
    EXPECT_EQ(std::get<QuantityFault>(parse_quantity(longest + ' ', kLength)).code, "too-long");
    std::string readings = "0.20";
    for (int i = 0; i < 60; ++i) readings += ", 0.2" + std::to_string(i % 10);
    const QuantityOrFault many = parse_quantity(readings + " mm", kLength);
    ASSERT_TRUE(std::holds_alternative<ParsedQuantity>(many)) << dump(many);
    EXPECT_EQ(std::get<ParsedQuantity>(many).measured.dof, 60);
}

struct Print {
    std::string_view name;
    Measured measured;
    std::string_view unit, want;
};

const Print kPrinted[] = {
    {"plain", {.value = 0.21, .u = 0.01}, "mm", "0.210 \xC2\xB1 0.020 mm"},
    {"rounded_up_to_a_new_place", {.value = 0.21, .u = 0.0498}, "mm", "0.21 \xC2\xB1 0.10 mm"},
    // JCGM 100:2008, 7.2.6: 10.47 milliohm; with k = 2 here, 20.94.
    {"gum_rounding", {.value = 10057.62, .u = 10.47}, "g", "10058 \xC2\xB1 21 g"},
    {"hundreds", {.value = 12345, .u = 620}, "h", "12300 \xC2\xB1 1200 h"},
    {"other_unit", {.value = 0.21, .u = 0.01}, "um", "210 \xC2\xB1 20 \xC2\xB5m"},
    {"offset_unit", {.value = 20.02, .u = 0.5}, "K", "293.2 \xC2\xB1 1.0 K"},
    {"number", {.value = 4.5, .u = 0.25}, "", "4.50 \xC2\xB1 0.50"},
    {"no_minus_zero", {.value = -0.0001, .u = 0.01}, "mm", "0.000 \xC2\xB1 0.020 mm"},
    {"negative", {.value = -1.26, .u = 0.05}, "", "-1.26 \xC2\xB1 0.10"},
    {"exact", {.value = 5}, "mm", "5 mm"},
    {"exact_fraction", {.value = 0.1}, "%", "0.1 %"},
    {"zero", {.value = 0, .u = 1}, "", "0.0 \xC2\xB1 2.0"},
    {"tiny", {.value = 1.25e-12, .u = 1e-13}, "g", "1.25e-12 \xC2\xB1 2.0e-13 g"},
    {"huge", {.value = 1.25e20, .u = 1e18}, "", "1.250e+20 \xC2\xB1 2.0e+18"},
    {"nothing_beside_its_uncertainty", {.value = 1, .u = 5e20}, "", "0 \xC2\xB1 1.0e+21"},
};

class PrintedQuantity : public testing::TestWithParam<Print> {};

TEST_P(PrintedQuantity, IsRoundedToItsUncertainty) {
    const Print& row = GetParam();
    EXPECT_EQ(to_text(row.measured, *find_unit(row.unit)), row.want);
}

INSTANTIATE_TEST_SUITE_P(Rows, PrintedQuantity, testing::ValuesIn(kPrinted),
                         [](const auto& row) { return std::string(row.param.name); });

// Two significant digits of U: the value moves by at most half of the last, U by at most 5 %, and a second printing
// changes nothing.
TEST(PrintedQuantity, ReadsBackTheSame) {
    std::mt19937_64 random(20);
    const auto uniform = [&] { return static_cast<double>(random() >> 11) * 0x1p-53; };
    int texts = 0;
    for (std::size_t i = 0; i < kDimensionCount; ++i) {
        const auto dimension = static_cast<Dimension>(i);
        for (const std::string_view name : unit_names(dimension)) {
            const UnitInfo& unit = *find_unit(name);
            for (int trial = 0; trial < 300; ++trial) {
                const double size = std::pow(10.0, uniform() * 60 - 30);
                const Measured measured = {.value = (uniform() * 2 - 1) * size,
                                           .u = trial % 10 == 0 ? 0 : size * std::pow(10.0, uniform() * 14 - 10)};
                const std::string text = to_text(measured, unit);
                const QuantityOrFault result = parse_quantity(text, dimension);
                ASSERT_TRUE(std::holds_alternative<ParsedQuantity>(result)) << text << ": " << dump(result);
                const auto& back = std::get<ParsedQuantity>(result);
                ASSERT_EQ(back.unit, &unit) << text;
                // Beside its offset, a small temperature loses digits of its own.
                const double lost = 1e-12 * (std::abs(measured.value) + std::abs(unit.offset));
                ASSERT_NEAR(back.measured.value, measured.value, 0.1 * measured.u + lost) << text;
                ASSERT_NEAR(back.measured.u, measured.u, 0.05 * measured.u) << text;
                ASSERT_EQ(back.states_uncertainty, measured.u > 0) << text;
                if (measured.u > 0 && unit.offset == 0) {
                    ASSERT_EQ(to_text(back.measured, unit), text);
                }
                ++texts;
            }
        }
    }
    EXPECT_GT(texts, 10'000);
}

// Whatever the bytes, an answer comes: pieces of quantities in every order.
TEST(QuantityText, AnyOrderOfPiecesGivesAnAnswer) {
    constexpr std::string_view kPieces[] = {"0.21", "5", "-",   "+-", "\xC2\xB1", "mm",           "%",
                                            "(",    ")", "k=2", ",",  ";",        "to",           "<",
                                            ">",    "=", " ",   "e5", ".",        "1e308",        "C",
                                            "s",    "/", "^2",  "\"", "exactly",  "\xE2\x80\x93", "\xC2\xB5m"};
    std::mt19937_64 random(21);
    std::set<std::string> codes;
    for (int trial = 0; trial < 100'000; ++trial) {
        std::string text;
        for (auto pieces = random() % 9; pieces > 0; --pieces) text += kPieces[random() % std::size(kPieces)];
        const auto dimension = static_cast<Dimension>(random() % kDimensionCount);
        const QuantityOrFault result = parse_quantity(text, dimension);
        if (const auto* const fault = std::get_if<QuantityFault>(&result)) {
            ASSERT_FALSE(fault->code.empty()) << text;
            codes.insert(std::string(fault->code));
            continue;
        }
        const auto& quantity = std::get<ParsedQuantity>(result);
        ASSERT_TRUE(std::isfinite(quantity.measured.value)) << text;
        ASSERT_TRUE(std::isfinite(quantity.measured.u) && quantity.measured.u >= 0) << text;
        ASSERT_GT(quantity.measured.dof, 0) << text;
        ASSERT_EQ(quantity.measured.u > 0, quantity.states_uncertainty && !quantity.exact) << text;
        ASSERT_NE(quantity.unit, nullptr) << text;
        ASSERT_EQ(quantity.unit->dimension, dimension) << text;
    }
    EXPECT_GE(codes.size(), 10U);
}

}  // namespace
}  // namespace grainside::measure
