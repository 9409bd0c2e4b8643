// Borders of formulas and of effort that no worked example happens to touch. Figures by hand from the formulas named,
// or recomputed apart from this library, in another language, from the published ones.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <string>
#include <variant>
#include <vector>

#include "measure/alloy_window.h"
#include "measure/blurred_range.h"
#include "measure/colour_difference.h"
#include "measure/conformity.h"
#include "measure/decision_risk.h"
#include "measure/grey_scale.h"
#include "measure/monte_carlo.h"
#include "measure/propagation.h"
#include "measure/proportion.h"
#include "measure/quantity_text.h"
#include "measure/repeats.h"
#include "measure/water.h"
#include "measure/weighing.h"

namespace grainside::measure {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

// ---- drawing -------------------------------------------------------------------------------------------------------

// JCGM 101:2008, 7.9.4 b: a block has J = 100 / (1 - p) trials or 10 000, whichever is more; two blocks at least (c to
// e). Exact inputs have settled by then.
TEST(Blocks, AreThoseOfTheGuide) {
    const Model constant = [](std::span<const double>) { return 0.1; };
    const auto trials = [&](double probability) {
        return monte_carlo(constant, {}, {.probability = probability}).value_or(MonteCarloResult{}).trials;
    };
    EXPECT_EQ(trials(0.95), 20'000U);
    EXPECT_EQ(trials(0.99), 20'000U);
    EXPECT_EQ(trials(0.995), 40'000U);
    EXPECT_EQ(trials(0.999), 200'000U);
}

// What adding up twenty thousand shares has lost, a second pass takes back.
TEST(Moments, OfAConstantAreExact) {
    const auto result = monte_carlo([](std::span<const double>) { return 0.1; }, {}, {});
    ASSERT_TRUE(result);
    EXPECT_NEAR(result->mean, 0.1, 2e-17);
    EXPECT_LT(result->u, 3e-17);
}

// ---- limits --------------------------------------------------------------------------------------------------------

// As far as the guard band and no further decides nothing: further is what is asked (JCGM 106:2012, 8.3.2, with the
// ends left to the rule of the book).
TEST(Decide, NeedsMoreThanTheGuardBand) {
    const Measured value{.value = 0, .u = 1};
    EXPECT_EQ(decide(value, {.lower = {}, .upper = -2}, DecisionRule::both_guarded, 1), Decision::undecided);
    EXPECT_EQ(decide(value, {.lower = {}, .upper = 2}, DecisionRule::both_guarded, 1), Decision::undecided);
    EXPECT_EQ(decide(value, {.lower = {}, .upper = -1.999}, DecisionRule::both_guarded, 1), Decision::undecided);
    EXPECT_EQ(decide(value, {.lower = {}, .upper = -2.001}, DecisionRule::both_guarded, 1), Decision::fails);
    EXPECT_EQ(decide(value, {.lower = {}, .upper = 2.001}, DecisionRule::both_guarded, 1), Decision::conforms);
    EXPECT_EQ(decide(value, {.lower = 2, .upper = {}}, DecisionRule::both_guarded, 1), Decision::undecided);
    EXPECT_EQ(decide(value, {.lower = 2.001, .upper = {}}, DecisionRule::both_guarded, 1), Decision::fails);
}

// An exact value has no uncertainty, whatever its degrees of freedom.
TEST(ExpandedUncertainty, OfAnExactValueIsNone) {
    EXPECT_EQ(expanded_uncertainty({.value = 3, .u = 0, .dof = 0}, 0.95), 0);
    EXPECT_NEAR(expanded_uncertainty({.value = 3, .u = 0.5}, 0.95), 0.5 * 1.959964, 5e-7);
}

// A uniform process from 0 to 1, all of it within tolerance; what lies above 0.5 is rejected. Nothing lies beyond the
// process, wherever limits stand.
TEST(GlobalRisk, LooksNowhereBeyondTheProcess) {
    const ItemSpread uniform{.density = [](double) { return 1.0; }, .from = 0, .to = 1};
    const GlobalRisk risk = global_risk(uniform, 1e-6, {.lower = -3, .upper = 2}, {.lower = -3, .upper = 0.5});
    EXPECT_NEAR(risk.producer, 0.5, 1e-6);
    EXPECT_NEAR(risk.consumer, 0, 1e-12);
    EXPECT_NEAR(risk.outside, 0, 1e-12);
}

// ---- compositions --------------------------------------------------------------------------------------------------

// The chance of lying in the range, over that of the best place (its middle): (Phi(2) - Phi(0)) / (Phi(1) - Phi(-1)) at
// an end, with the digits of the normal table.
TEST(WindowFit, IsHeldAgainstTheMiddleOfTheRange) {
    const AlloyWindow window{.elements = {{"Al", 3.7, 4.3}}, .balance = "Zn"};
    const auto fit = fit_window(window, {{"Al", {.value = 3.7, .u = 0.3}}}, {});
    ASSERT_TRUE(fit);
    EXPECT_NEAR(fit->elements.at(0).log_fit, std::log(0.4772499 / 0.6826895), 1e-6);
    const auto middle = fit_window(window, {{"Al", {.value = 4.0, .u = 0.3}}}, {});
    ASSERT_TRUE(middle);
    EXPECT_NEAR(middle->elements.at(0).log_fit, 0, 1e-12);
    EXPECT_FALSE(middle->worst);
}

// Where the others may take all there is, nothing need be left; where they take at least 60, at most 40.
TEST(BalanceElement, MayBeNone) {
    const AlloyWindow window{.elements = {{"Cu", 40, 70}, {"Ni", 20, 40}}, .balance = "Zn"};
    const auto range = balance_range(window, {});
    ASSERT_TRUE(range);
    EXPECT_EQ(range->low, 0);
    EXPECT_DOUBLE_EQ(range->high, 40);
}

// ---- tails ---------------------------------------------------------------------------------------------------------

// The asymptotic series of the normal tail (Abramowitz and Stegun 26.2.12) with exact fractions: log of the chance to
// exceed z. Its first terms left out are below 2e-12 at 30.
TEST(NormalTail, IsTheSeriesBeyondThirty) {
    for (const double z : {30.0, 32.0, 40.0}) {
        const double w = 1 / (z * z);
        const double series = 1 - w + 3 * w * w - 15 * w * w * w + 105 * w * w * w * w;
        const double expected = -z * z / 2 - std::log(2 * std::acos(-1.0)) / 2 - std::log(z) + std::log(series);
        EXPECT_NEAR(*log_probability({.value = 0, .u = 1}, {z, kInfinity}), expected, 5e-12 + 4e-16 * z * z) << z;
    }
    // Just below the border the complementary error function is asked; both agree on either side of it.
    const double step = *log_probability({.value = 0, .u = 1}, {29.9999999, kInfinity}) -
                        *log_probability({.value = 0, .u = 1}, {30, kInfinity});
    EXPECT_NEAR(step, 1e-7 * (30 + 1 / 30.0), 1e-10);
}

// A slice so thin that it is taken as its middle height times its width, corrected for the slope: that leaves out a
// sixth of the square of half its width, here 4e-12. Simpson's rule over it errs by less than 1e-18.
TEST(ThinSlice, IsThatOfSimpsonsRule) {
    for (const double middle : {0.5, 5.0, 15.0, 100.0}) {
        const double half = 5e-6;
        const double low = middle - half;
        const double high = middle + half;
        const double ends = std::exp((middle * middle - low * low) / 2) + std::exp((middle * middle - high * high) / 2);
        const double expected =
            -middle * middle / 2 - std::log(2 * std::acos(-1.0)) / 2 + std::log(high - low) + std::log((ends + 4) / 6);
        EXPECT_NEAR(*log_probability({.value = 0, .u = 1}, {low, high}), expected, 1e-11) << middle;
    }
}

// ---- colours -------------------------------------------------------------------------------------------------------

// CIEDE2000 does not ask which colour was first (Sharma, Wu and Dalal, 2005); hues half a turn apart, about the blue
// where the rotation counts, are where an order would show.
TEST(Ciede2000, IsTheSameInBothOrdersHalfATurnApart) {
    constexpr double kDegree = 3.14159265358979323846 / 180;
    for (double apart = 178; apart <= 182; apart += 0.125) {
        for (const double middle : {95.0, 275.0}) {
            const double from = (middle - apart / 2) * kDegree;
            const double to = (middle + apart / 2) * kDegree;
            const Lab first{50, 40 * std::cos(from), 40 * std::sin(from)};
            const Lab second{55, 60 * std::cos(to), 60 * std::sin(to)};
            EXPECT_NEAR(difference_ciede2000(first, second), difference_ciede2000(second, first), 1e-9) << apart;
        }
    }
}

// The zero of a colour meter may have a sign.
TEST(Hue, OfGreyIsNoneWhateverItsSign) {
    EXPECT_EQ(hue({50, -0.0, 0.0}), 0);
    EXPECT_EQ(hue({50, -0.0, -0.0}), 0);
    EXPECT_EQ(hue({50, 0.0, 0.0}), 0);
}

// Nearly grey colours go over into the grey between them; the third term of CIEDE2000 vanishes with the chroma.
TEST(Ciede2000, OfGreysIsTheLightnessAlone) {
    // S_L at a mean lightness of 55: 1 + 0.015 * 25 / sqrt(45).
    const double expected = 10 / (1 + 0.015 * 25 / std::sqrt(45.0));
    EXPECT_NEAR(difference_ciede2000({50, 0, 0}, {60, 0, 0}), expected, 1e-12);
    EXPECT_NEAR(difference_ciede2000({50, 1e-9, 0}, {60, 1e-9, 0}), expected, 1e-9);
    EXPECT_NEAR(difference_ciede2000({50, 0, 0}, {60, 0, 1e-9}), expected, 1e-9);
}

// ISO 105-A05, clause 7.2: the blue hue is 280 degrees, and distances go the shorter way round; a red of 3.8 degrees
// is 83.8 away from it, not 276.2. Recomputed from the clause.
TEST(GreyScale, MeasuresTheDistanceFromBlueTheShorterWay) {
    EXPECT_NEAR(grey_scale_difference({50, 60, 4}, {50, 45, 3}), 7.132045910948405, 1e-9);
    EXPECT_NEAR(grey_scale_difference({50, 60, 0.5}, {50, 45, -0.2}), 7.150575836640348, 1e-9);
    EXPECT_NEAR(grey_scale_difference({50, 50, 30}, {50, 35, 20}), 9.161720151906588, 1e-9);
}

// ---- weighing ------------------------------------------------------------------------------------------------------

// Tanaka 2001, the coefficients as printed: density in g/cm3 to the last digit that they carry, recomputed.
TEST(Water, IsThePrintedFormulaToItsLastDigit) {
    const auto tanaka = [](double t) {
        return 0.999974950 * (1 - (t - 3.983035) * (t - 3.983035) * (t + 301.797) / (522528.9 * (t + 69.34881)));
    };
    for (const double t : {0.0, 4.0, 15.0, 22.5, 40.0}) EXPECT_NEAR(*water_density(t), tanaka(t), 1e-14) << t;
}

// In a vacuum nothing is lifted: the balance tells the mass, whatever the densities.
TEST(MassInVacuum, IsTheReadingWithoutAir) {
    EXPECT_DOUBLE_EQ(mass_in_vacuum(12.5, 2.7, 0, 8).value_or(0), 12.5);
    EXPECT_DOUBLE_EQ(mass_in_vacuum(0, 2.7, 0.0012, 8).value_or(-1), 0);
}

// ---- texts ---------------------------------------------------------------------------------------------------------

// What a comma may stand for, by what stands around it.
TEST(DecimalComma, MayBeWhatItsNeighboursAllow) {
    const std::pair<const char*, const char*> rows[] = {
        {"0,21, 0.22, 0.23 mm", "write `0.21` for one number, `0, 21` for two"},  // a comma and a space part readings
        {"1,2,3 mm", "write `1, 2` for two"},                                     // two commas are no decimal point
        {"1,2-1,4 mm", "write `1.2` for one number, `1, 2` for two"},             // the end of a range is no fraction
        {"1234,567 mm",
         "write `1234.567` for one number, `1234, 567` for two"},  // no group of thousands has four digits
        {"1.5,200 mm", "write `1.5, 200` for two"},                // nor a point before the comma
        {"12,345,678 mm", "write `12345678` for thousands, `12, 345` for two"},
        {"1,200.5 mm", "write `1200.5` for thousands, `1, 200.5` for two"},
    };
    for (const auto& [text, hint] : rows) {
        const QuantityOrFault read = parse_quantity(text, Dimension::length);
        const auto* const fault = std::get_if<QuantityFault>(&read);
        ASSERT_NE(fault, nullptr) << text;
        EXPECT_EQ(fault->code, "decimal-comma") << text;
        EXPECT_EQ(fault->hint, hint) << text;
    }
}

}  // namespace
}  // namespace grainside::measure
