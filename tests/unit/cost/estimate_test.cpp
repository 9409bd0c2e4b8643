// The spread of totals against formulas written out here, drivers, gaps, what is unusual, and what-if.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <string>
#include <string_view>

#include "grainside/cost.h"
#include "support/built_in_evidence.h"

namespace grainside {
namespace {

Dossier dossier_of(std::string_view costs, std::string_view sample = "what: Tote, category: bag, price: 100 EUR") {
    std::string yaml = "sample: {";
    yaml.append(sample).append("}\ncosts:\n").append(costs);
    return support::dossier_of(yaml);
}
CostEstimate estimate_of(std::string_view costs) {
    return estimate_cost(support::built_in_evidence(), dossier_of(costs));
}

double u_of_range(double low, double high) {
    return (high - low) / 2 / std::sqrt(3.0);
}

// JCGM 101:2008, 6.4.2: 95 % of a rectangular distribution are 95 % of its width, and u is half the width over root 3.
TEST(CostEstimate, OfOneRangeIsClosedForm) {
    const CostEstimate cost = estimate_of("  packing: 1.20-1.80 EUR\n");
    ASSERT_EQ(cost.lines.size(), 1U);
    EXPECT_NEAR(cost.lines[0].amount.value, 1.5, 1e-12);
    EXPECT_NEAR(cost.lines[0].amount.u, u_of_range(1.2, 1.8), 1e-12);
    EXPECT_NEAR(cost.lines[0].amount.low, 1.215, 1e-12);
    EXPECT_NEAR(cost.lines[0].amount.high, 1.785, 1e-12);
    // Drawn, the total comes to the same within the spread of 200000 draws.
    EXPECT_NEAR(cost.total.low, 1.215, 0.003);
    EXPECT_NEAR(cost.total.high, 1.785, 0.003);
}

// Sheets of products and amounts with ranges of several widths. For independent X and Y,
// Var(XY) = x^2 v(Y) + y^2 v(X) + v(X) v(Y), so that the total's variance is known without a draw; the first order of
// JCGM 100 leaves out the last term.
TEST(CostEstimate, OfVariedSheetsHasTheKnownSpread) {
    std::mt19937_64 random(20261126);
    std::uniform_real_distribution<double> middle(1, 20);
    std::uniform_real_distribution<double> width(0.01, 0.4);
    for (int sheet = 0; sheet < 12; ++sheet) {
        std::string costs = "  materials:\n";
        double exact = 0;
        double first_order = 0;
        double value = 0;
        for (int line = 0; line < 2 + sheet; ++line) {
            double x[2], u[2];
            std::string ends[2];
            for (int i = 0; i < 2; ++i) {
                const double half = width(random);
                const double at = middle(random);
                const double low = std::round(1e4 * at * (1 - half)) / 1e4;
                const double high = std::round(1e4 * at * (1 + half)) / 1e4;
                ends[i] = std::to_string(low) + "-" + std::to_string(high);
                x[i] = (low + high) / 2;
                u[i] = u_of_range(low, high);
            }
            costs += "    - {item: i" + std::to_string(line) + ", length: " + ends[0] + " m, price: " + ends[1] +
                     " EUR/m}\n";
            value += x[0] * x[1];
            first_order += std::pow(x[0] * u[1], 2) + std::pow(x[1] * u[0], 2);
            exact += std::pow(u[0] * u[1], 2);
        }
        exact += first_order;
        const CostEstimate cost = estimate_of(costs);
        EXPECT_NEAR(cost.total.value, value, 1e-9 * value);
        EXPECT_NEAR(cost.by_propagation.u, std::sqrt(first_order), 1e-6 * std::sqrt(first_order)) << sheet;
        // 200000 draws give u within 0.2 %, one standard deviation; where fewer did, within two digits of it.
        EXPECT_NEAR(cost.total.u, std::sqrt(exact), 0.02 * std::sqrt(exact)) << sheet;
        EXPECT_LE(cost.trials, 200000U);
        const bool near = std::abs(cost.by_propagation.low - cost.total.low) <= cost.tolerance &&
                          std::abs(cost.by_propagation.high - cost.total.high) <= cost.tolerance;
        EXPECT_EQ(cost.methods_agree, near);
    }
}

// Many like ranges are near to normal (JCGM 100:2008, G.2.1): then both methods agree.
TEST(CostEstimate, OfManyLinesAgreesByBothMethods) {
    std::string costs = "  materials:\n";
    for (int i = 0; i < 40; ++i) costs += "    - {item: i" + std::to_string(i) + ", amount: 2-4 EUR}\n";
    const CostEstimate cost = estimate_of(costs);
    EXPECT_TRUE(cost.methods_agree);
    EXPECT_NEAR(cost.total.u, std::sqrt(40.0) * u_of_range(2, 4), 0.05);
}

constexpr std::string_view kSheet =
    "  sales_tax: 22 %\n  exchange: {USD: 0.80-1.00}\n"
    "  materials: [{item: leather, area: 5-7 sq ft, cutting_yield: 60-80 %, price: 4-6 USD/sq ft}]\n"
    "  hardware: 3 USD\n"
    "  labour: [{item: cutting, time: 20-30 min, rate: 14-18 EUR/h}, {item: sewing, time: 60 min, rate: same as "
    "cutting}]\n"
    "  overhead: {share: 30-50 %, of: labour}\n  packing: 1 EUR\n";

TEST(CostEstimate, HasDriversThatAddUp) {
    const CostEstimate cost = estimate_of(kSheet);
    double sum = 0;
    double last = 1;
    for (const CostDriver& driver : cost.drivers) {
        EXPECT_LE(driver.share, last);
        EXPECT_GE(driver.share, 0.01);
        last = driver.share;
        sum += driver.share;
    }
    // Those below one percent are not among them; there are eight inputs.
    EXPECT_GT(sum, 0.92);
    EXPECT_LE(sum, 1 + 1e-9);
}

// One dollar for leather and hardware, one wage for cutting and sewing.
TEST(CostEstimate, DrawsWhatLinesShareOnce) {
    const CostEstimate cost = estimate_of("  exchange: {USD: 0.80-1.00}\n  materials: 10 USD\n  hardware: 10 USD\n");
    EXPECT_NEAR(cost.by_propagation.u, 20 * u_of_range(0.8, 1), 1e-9);
    EXPECT_NEAR(cost.total.u, 20 * u_of_range(0.8, 1), 0.01);
    ASSERT_EQ(cost.drivers.size(), 1U);
    EXPECT_EQ(cost.drivers[0].item, "USD");
    EXPECT_EQ(cost.drivers[0].input, "exchange rate");
    const CostEstimate work =
        estimate_of("  labour: [{item: a, time: 1 h, rate: 10-20 EUR/h}, {item: b, time: 3 h, rate: same as a}]\n");
    EXPECT_NEAR(work.by_propagation.u, 4 * u_of_range(10, 20), 1e-9);
}

// Price and costs in dollars: what a dollar is worth in euro moves both alike.
TEST(CostEstimate, HasAMultipleWithoutTheSharedRate) {
    const Dossier dossier =
        dossier_of("  currency: EUR\n  exchange: {USD: 0.50-1.50}\n  materials: 20 USD\n", "what: Tote, price: 60 USD");
    const CostEstimate cost = estimate_cost(support::built_in_evidence(), dossier);
    ASSERT_TRUE(cost.multiple);
    EXPECT_NEAR(cost.multiple->multiple.value, 3, 1e-12);
    EXPECT_NEAR(cost.multiple->multiple.u, 0, 1e-9);
    EXPECT_GT(cost.total.u, 5);
}

TEST(CostEstimate, ComparesNoTwoCurrencies) {
    const Dossier dossier = dossier_of("  currency: EUR\n  materials: 20 EUR\n", "what: Tote, price: 60 GBP");
    const CostEstimate cost = estimate_cost(support::built_in_evidence(), dossier);
    EXPECT_FALSE(cost.multiple);
    bool told = false;
    for (const std::string& remark : cost.remarks) told = told || remark.find("in GBP") != std::string::npos;
    EXPECT_TRUE(told);
}

TEST(CostEstimate, IsTheSameEveryTime) {
    const Dossier dossier = dossier_of(kSheet);
    const CostEstimate first = estimate_cost(support::built_in_evidence(), dossier);
    const CostEstimate second = estimate_cost(support::built_in_evidence(), dossier);
    EXPECT_EQ(first.total.u, second.total.u);
    EXPECT_EQ(first.total.low, second.total.low);
    EXPECT_EQ(first.multiple->multiple.high, second.multiple->multiple.high);
}

// 10 % of the value below 20 USD and 9 % above: the step is drawn, and said.
TEST(CostEstimate, DrawsBothSidesOfAStep) {
    const CostEstimate cost =
        estimate_cost(support::built_in_evidence(),
                      dossier_of("  sold_in: us\n  materials: 19-21 USD\n  duty: {rate: usual us-leather-handbag}\n",
                                 "what: Tote, price: 60 USD"));
    const CostAmount& duty = cost.lines.back().amount;
    // Above the step the duty is 1.80 to 1.89, below it 1.90 to 2.00.
    EXPECT_NEAR(duty.low, 1.80, 0.01);
    EXPECT_NEAR(duty.high, 2.00, 0.01);
    bool told = false;
    for (const std::string& remark : cost.remarks) told = told || remark.find("changes at 20 USD") != std::string::npos;
    EXPECT_TRUE(told);
}

std::string whats(const CostEstimate& cost) {
    std::string text;
    for (const CostGap& gap : cost.gaps) text += (text.empty() ? "" : "; ") + gap.what;
    return text;
}

struct GapRow {
    std::string_view name, costs, want;
};
constexpr GapRow kGaps[] = {
    {"no_price", "  materials: {item: a, area: 5 sq ft, waste: 20 %}\n",
     "a: price; hardware; labour; overhead; packing"},
    {"no_yield", "  materials: {item: a, area: 5 sq ft, price: 4 EUR/sq ft}\n",
     "a: cutting yield; hardware; labour; overhead; packing"},
    {"no_area", "  materials: {item: a, waste: 20 %, price: 4 EUR/sq ft}\n",
     "a: area; hardware; labour; overhead; packing"},
    {"no_rate", "  labour: {item: a, time: 5 min}\n", "a: rate; materials; hardware; overhead; packing"},
    {"no_time", "  labour: {item: a, rate: 15 EUR/h}\n", "a: time; materials; hardware; overhead; packing"},
    {"none_is_no_gap", "  materials: 3 EUR\n  hardware: none\n  labour: 5 EUR\n  overhead: none\n  packing: none\n",
     ""},
};
class CostGaps : public testing::TestWithParam<GapRow> {};
TEST_P(CostGaps, AreNamed) {
    const CostEstimate cost = estimate_of(GetParam().costs);
    EXPECT_EQ(whats(cost), GetParam().want);
    if (cost.multiple) {
        EXPECT_EQ(cost.multiple->floor_only, !GetParam().want.empty());
    }
}
INSTANTIATE_TEST_SUITE_P(Rows, CostGaps, testing::ValuesIn(kGaps),
                         [](const auto& row) { return std::string(row.param.name); });

// A tote is answered with the minutes of a tote (common practice: 45 to 90).
TEST(CostEstimate, AnswersAGapWithWhatIsUsual) {
    const CostEstimate cost = estimate_of("  labour: {item: a, rate: 15 EUR/h}\n");
    ASSERT_FALSE(cost.gaps.empty());
    ASSERT_EQ(cost.gaps[0].usual.size(), 1U);
    EXPECT_EQ(cost.gaps[0].usual[0].id, "tote-minutes");
    EXPECT_EQ(cost.gaps[0].usual[0].range, "45-90 min");
    EXPECT_FALSE(cost.gaps[0].usual[0].sources.empty());
    EXPECT_EQ(cost.total.value, 0);  // nothing is filled in
}

struct UnusualRow {
    std::string_view name, costs, want;
};
constexpr UnusualRow kUnusual[] = {
    {"usual_yield", "  materials: {item: a, material: full-grain-leather, area: 7 sq ft, cutting_yield: 70 %}\n", ""},
    {"low_yield", "  materials: {item: a, material: full-grain-leather, area: 7 sq ft, cutting_yield: 30-40 %}\n",
     "a cutting yield full-grain-yield"},
    {"overlapping_yield",
     "  materials: {item: a, material: full-grain-leather, area: 7 sq ft, cutting_yield: 60-66 %}\n", ""},
    {"no_material_stated", "  materials: {item: a, area: 7 sq ft, cutting_yield: 30-40 %}\n", ""},
    {"cloth", "  materials: {item: a, material: cotton, area: 1 m2, waste: 12 %, price: 0.50 EUR/m2}\n", ""},
    {"long_work", "  labour: {item: a, time: 9 h, rate: 15 EUR/h}\n", "labour time tote-minutes"},
    {"short_work", "  labour: {item: a, time: 5-10 min, rate: 15 EUR/h}\n", "labour time tote-minutes"},
    {"work_by_amount", "  labour: [{item: a, time: 5 min, rate: 15 EUR/h}, {item: b, amount: 20 EUR}]\n", ""},
    {"small_area", "  materials: {item: a, material: leather, area: 1 sq ft, waste: 25 %}\n",
     "materials area tote-area"},
    {"leather_trim", "  materials: {item: a, part: trim, material: leather, area: 1 sq ft, waste: 25 %}\n", ""},
    {"price_in_another_currency",
     "  exchange: {USD: 0.9}\n  materials: {item: a, material: full-grain-leather, price: 0.40 EUR/sq ft, waste: 25 "
     "%}\n",
     "a price full-grain-price"},
    {"price_without_a_rate",
     "  materials: {item: a, material: full-grain-leather, price: 0.40 EUR/sq ft, waste: 25 %}\n", ""},
};
// Each end of a usual range belongs to it: rules/costs/cutting.yaml and prices.yaml.
struct EndRow {
    std::string_view name, material, value;
};
constexpr EndRow kEnds[] = {
    {"waste_10", "cotton", "waste: 10 %"},
    {"waste_15", "cotton", "waste: 15 %"},
    {"yield_65", "full-grain-leather", "cutting_yield: 65 %"},
    {"yield_75", "full-grain-leather", "cutting_yield: 75 %"},
    {"price_2_50", "full-grain-leather", "price: 2.50 USD/sq ft"},
    {"price_6", "full-grain-leather", "price: 6.00 USD/sq ft"},
    {"price_18", "full-grain-leather", "price: 18 USD/sq ft"},
    {"price_30", "full-grain-leather", "price: 30 USD/sq ft"},
};
class UsualEnds : public testing::TestWithParam<EndRow> {};
TEST_P(UsualEnds, AreUsual) {
    std::string line = "  currency: USD\n  materials: {item: a, material: ";
    line.append(GetParam().material).append(", ").append(GetParam().value).append("}\n");
    EXPECT_TRUE(estimate_of(line).unusual.empty());
}
INSTANTIATE_TEST_SUITE_P(Rows, UsualEnds, testing::ValuesIn(kEnds),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(CostEstimate, PrintsMinutesInFull) {
    const CostEstimate cost = estimate_of("  labour: {item: a, time: 25-30 h, rate: 15 EUR/h}\n");
    ASSERT_EQ(cost.unusual.size(), 1U);
    EXPECT_EQ(cost.unusual[0].value, "1500-1800 min in all");
}

class Unusual : public testing::TestWithParam<UnusualRow> {};
TEST_P(Unusual, IsTold) {
    std::string text;
    for (const UnusualCost& one : estimate_of(GetParam().costs).unusual) {
        text += (text.empty() ? "" : "; ") + one.item + ' ' + one.input + ' ' + one.usual.id;
    }
    EXPECT_EQ(text, GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, Unusual, testing::ValuesIn(kUnusual),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(CostEstimate, ChangesWhatIsAsked) {
    const Dossier dossier = dossier_of(kSheet);
    const auto& book = support::built_in_evidence();
    const CostEstimate before = estimate_cost(book, dossier);
    const auto same = estimate_cost(book, dossier, {{"leather", "price", "4-6 USD/sq ft"}});
    ASSERT_TRUE(same);
    EXPECT_EQ(same.value().total.value, before.total.value);
    const auto dearer = estimate_cost(book, dossier, {{"leather", "price", "8-12 USD/sq ft"}});
    ASSERT_TRUE(dearer);
    // 6 sq ft at 5 USD with 70 %, at 0.90: 38.571; at 10 USD twice that.
    EXPECT_NEAR(dearer.value().total.value - before.total.value, 6 * 5 / 0.7 * 0.9, 1e-9);
    // The wage of sewing is that of cutting: 25 and 60 min, with 40 % overhead.
    const auto wage = estimate_cost(book, dossier, {{"cutting", "rate", "26 EUR/h"}});
    ASSERT_TRUE(wage);
    EXPECT_NEAR(wage.value().total.value - before.total.value, 10 * 85.0 / 60 * 1.4, 1e-9);
    EXPECT_EQ(estimate_cost(book, dossier).total.value, before.total.value);  // the dossier stays as it is
}

bool remarks_on(const CostEstimate& cost, std::string_view text) {
    return std::any_of(cost.remarks.begin(), cost.remarks.end(),
                       [&](const std::string& remark) { return remark.find(text) != std::string::npos; });
}

TEST(CostEstimate, SaysWhereAChangeCutsWhatFollows) {
    const Dossier dossier = dossier_of(kSheet);
    const auto& book = support::built_in_evidence();
    constexpr std::string_view kCut = "The rate of sewing no longer follows that of cutting.";
    const auto follower = estimate_cost(book, dossier, {{"sewing", "rate", "20 EUR/h"}});
    ASSERT_TRUE(follower);
    EXPECT_TRUE(remarks_on(follower.value(), kCut));
    const auto root = estimate_cost(book, dossier, {{"cutting", "rate", "20 EUR/h"}});
    ASSERT_TRUE(root);
    EXPECT_FALSE(remarks_on(root.value(), kCut));
    // A waste in place of the yield that another line follows: 10 m2 and 20 m2 with half of it wasted.
    const auto cut =
        estimate_cost(book,
                      dossier_of("  materials:\n    - {item: a, area: 10 m2, cutting_yield: 100 %, price: 1 EUR/m2}\n"
                                 "    - {item: b, area: 20 m2, cutting_yield: same as a, price: 1 EUR/m2}\n"),
                      {{"a", "waste", "50 %"}});
    ASSERT_TRUE(cut);
    EXPECT_NEAR(cut.value().total.value, 60, 1e-9);
}

TEST(CostEstimate, SaysWhatIsNotHeldAgainstTheUsual) {
    constexpr std::string_view kLine = "  materials: {item: a, material: full-grain-leather, price: 0.40 EUR/sq ft}\n";
    constexpr std::string_view kTold = "Not held against what is usual";
    EXPECT_TRUE(remarks_on(estimate_of(kLine), kTold));
    EXPECT_TRUE(remarks_on(estimate_of(kLine), "`exchange: {USD: ...}`"));
    EXPECT_FALSE(remarks_on(estimate_of("  exchange: {USD: 0.9}\n" + std::string(kLine)), kTold));
    EXPECT_FALSE(remarks_on(estimate_of("  materials: {item: a, price: 0.40 EUR/sq ft}\n"), kTold));
}

// The base of each duty, one for each that differs.
TEST(CostEstimate, NamesEachBaseOfADuty) {
    const CostEstimate cost = estimate_of(
        "  sold_in: us\n  materials: 20 EUR\n  duty:\n    - {item: a, rate: 9 %}\n    - {item: b, rate: 2 %, base: "
        "with-freight}\n    - {item: c, rate: 1 %}\n");
    EXPECT_EQ(
        cost.duty_base,
        "maker's price (the price free on board, 19 USC 1401a(b)(4)(A)); maker's price, freight and insurance (as "
        "the dossier says)");
}

TEST(CostEstimate, SaysWhereThePriceIsBelowTheCosts) {
    const auto told = [](std::string_view costs) {
        for (const std::string& remark : estimate_of(costs).remarks) {
            if (remark.find("below the total") != std::string::npos) return true;
        }
        return false;
    };
    EXPECT_TRUE(told("  materials: 110-120 EUR\n"));
    EXPECT_FALSE(told("  materials: 90-120 EUR\n"));
}

// Each share of all before it as large as may be, behind the largest amounts.
TEST(CostEstimate, StaysFinite) {
#ifdef GRAINSIDE_UNDER_SANITIZER
    constexpr int kLines = 30;
#else
    constexpr int kLines = 99;
#endif
    std::string costs =
        "  exchange: {USD: 1e9}\n  materials:\n    - {item: i0, count: 1e8-1e9, length: 1e8-1e9 mm, price: "
        "1e9 USD/mm, cutting_yield: 1e-6 %}\n";
    for (int i = 1; i < kLines; ++i) {
        costs += "    - {item: i" + std::to_string(i) + ", share: 500 %, of: [";
        for (int j = 0; j < i; ++j) costs += (j > 0 ? ", i" : "i") + std::to_string(j);
        costs += "]}\n";
    }
    const CostEstimate cost = estimate_of(costs);
    EXPECT_EQ(cost.lines.size(), std::size_t{kLines});
    for (const double one : {cost.total.value, cost.total.u, cost.total.high, cost.by_propagation.u, cost.tolerance}) {
        EXPECT_TRUE(std::isfinite(one)) << one;
    }
    ASSERT_TRUE(cost.multiple);
    EXPECT_TRUE(std::isfinite(cost.multiple->multiple.u));
    const CostEstimate little = estimate_of("  packing: 0 EUR +- 1e-300\n");
    EXPECT_TRUE(std::isfinite(little.total.u));
}

TEST(CostEstimate, OfNoCostsIsNothing) {
    const Dossier dossier = support::dossier_of("sample: {what: Tote, price: 60 EUR}\n");
    const CostEstimate cost = estimate_cost(support::built_in_evidence(), dossier);
    EXPECT_FALSE(cost.on_record);
    EXPECT_FALSE(cost.multiple);
    EXPECT_FALSE(estimate_cost(support::built_in_evidence(), dossier, {{"a", "price", "1 EUR"}}));
}

}  // namespace
}  // namespace grainside
