// Bad costs, each with the exact place; every fault at once; and changes that cannot be made.
#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "grainside/cost.h"
#include "support/built_in_evidence.h"
#include "support/fault_dump.h"

namespace grainside {
namespace {

std::vector<Issue> issues_of(const std::string& text) {
    const auto dossier = Dossier::parse("d.yaml", text, {}, support::built_in_evidence());
    return dossier ? dossier.value().warnings() : dossier.issues();
}

struct Row {
    std::string_view name, line, want;
};

struct LineRow {
    std::string_view name, line, at, code;
};
// One line of materials, and where in it the fault stands.
constexpr LineRow kLines[] = {
    {"right", "area: 6 sq ft, waste: 20-30 %, price: 4.50-6.00 EUR/sq ft", "", ""},
    {"right_code_first", "area: 6 sq ft, waste: 20 %, price: EUR 4.50-6.00 / sq ft", "", ""},
    {"right_plus_minus", "area: 6 sq ft, waste: 20 %, price: 4.50 +- 0.30 EUR/m2", "", ""},
    {"right_per", "area: 6 sq ft, waste: 20 %, price: 8 EUR per sq ft", "", ""},
    {"right_each", "count: 2, price: 1.10-1.60 EUR each", "", ""},
    {"right_symbol", "amount: \xE2\x82\xAC 4.50", "", ""},
    {"right_percent_spread", "amount: 4.50 EUR +/- 5 %", "", ""},
    {"right_usual", "area: 6 sq ft, cutting_yield: usual full-grain-yield, price: 4 EUR/sq ft", "", ""},
    {"no_currency", "amount: 4.50", "4.50", "missing-currency"},
    {"dollar_sign", "amount: $4.50", "$4.50", "which-currency"},
    {"yen_sign",
     "amount: \"\xC2\xA5"
     "400\"",
     "\"\xC2", "which-currency"},
    {"unknown_code", "amount: 4.50 EUX", "4.50", "unknown-currency"},
    {"small_code", "amount: 4.50 Eur", "4.50", "unknown-currency"},
    {"euro_in_words", "amount: 4.50 EURO", "4.50", "unknown-currency"},
    {"right_hides_bare", "hides: 0.25, price: 200 EUR/hide", "", ""},
    {"two_codes", "amount: 4 EUR - 5 GBP", "4 EUR", "mixed-currencies"},
    {"no_rate", "amount: 4.50 GBP", "4.50", "missing-exchange"},
    {"decimal_comma", "\"amount\": \"4,50 EUR\"", "\"4,50", "decimal-comma"},
    {"no_number", "amount: some EUR", "some", "bad-quantity"},
    {"huge_amount", "amount: 1e12 EUR", "1e12", "out-of-range"},
    {"huge_price", "area: 1 sq ft, waste: 0 %, price: 1 EUR/nm, width: 1 m", "1 EUR/nm", ""},
    {"huge_share", "amount: 4 EUR, share: 600 %", "600", "out-of-range"},
    {"no_width", "area: 1 sq ft, waste: 0 %, price: 1 EUR/m, width: 1e-9 mm", "1e-9", "not-positive"},
    {"negative_money", "amount: -4 EUR", "-4", "negative"},
    {"reversed", "amount: 6-4 EUR", "6-4", "range-reversed"},
    {"right_many_spaces",
     "amount: 4                                                                                          EUR", "", ""},
    {"unknown_unit", "area: 6 sqq ft, waste: 0 %, price: 4 EUR/sq ft", "6 sqq", "unknown-unit"},
    {"paid_for_nothing_known", "area: 6 sq ft, waste: 0 %, price: 4 EUR/furlong", "4 EUR", "unknown-unit"},
    {"paid_by_temperature", "area: 6 sq ft, waste: 0 %, price: 4 EUR/K", "4 EUR", "unknown-unit"},
    {"no_unit", "area: 6, waste: 0 %, price: 4 EUR/sq ft", "6,", "missing-unit"},
    {"price_by_mass", "area: 6 sq ft, waste: 0 %, price: 4 EUR/kg", "4 EUR", "wrong-unit"},
    {"price_of_nothing", "area: 6 sq ft, waste: 0 %, price: 4 EUR", "4 EUR", "wrong-unit"},
    {"amount_per_unit", "amount: 4 EUR/m", "4 EUR", "wrong-unit"},
    {"hide_is_missing", "area: 6 sq ft, waste: 0 %, price: 40 EUR/hide", "40 EUR", "missing-key"},
    {"width_is_missing", "area: 6 sq ft, waste: 0 %, price: 4 EUR/yd", "4 EUR", "missing-key"},
    {"width_for_nothing", "area: 6 sq ft, waste: 0 %, width: 54 in, price: 4 EUR/sq ft", "54 in", "both-ways"},
    {"hide_of_area_by_area", "area: 6 sq ft, allowance: 0 %, price: 5 EUR/sq ft, hide: 48 sq ft", "48 sq", "both-ways"},
    {"hide_of_hides_by_the_hide", "hides: 1 hides, price: 200 EUR/hide, hide: 48 sq ft", "48 sq", "both-ways"},
    {"hide_of_pieces", "count: 1, price: 2 EUR/piece, hide: 48 sq ft", "48 sq", "both-ways"},
    {"hide_of_an_amount_by_length", "length: 2 m, price: 2 EUR/m, hide: 48 sq ft", "48 sq", "both-ways"},
    {"right_area_by_the_hide", "area: 6 sq ft, allowance: 0 %, price: 240 EUR/hide, hide: 48 sq ft", "", ""},
    {"right_hides_by_area", "hides: 1 hides, price: 5 EUR/sq ft, hide: 48 sq ft", "", ""},
    {"right_hide_before_its_price", "area: 6 sq ft, allowance: 0 %, hide: 48 sq ft", "", ""},
    {"two_quantities", "area: 6 sq ft, length: 2 m, price: 4 EUR/sq ft", "2 m", "both-ways"},
    {"yield_and_waste", "area: 6 sq ft, cutting_yield: 75 %, waste: 25 %, price: 4 EUR/sq ft", "25 %", "both-ways"},
    {"yield_of_hides", "hides: 2 hides, cutting_yield: 75 %, price: 40 EUR/hide", "75 %", "both-ways"},
    {"amount_and_price", "amount: 4 EUR, price: 4 EUR/m", "4 EUR/m", "both-ways"},
    {"yield_above_all", "area: 6 sq ft, cutting_yield: 95-105 %, price: 4 EUR/sq ft", "95-105", "above-100"},
    {"yield_of_nothing", "area: 6 sq ft, cutting_yield: 0 %, price: 4 EUR/sq ft", "0 %", "not-positive"},
    {"all_is_waste", "area: 6 sq ft, waste: 80-100 %, price: 4 EUR/sq ft", "80-100", "above-100"},
    {"no_such_usual", "area: 6 sq ft, cutting_yield: usual full-grain-yeild, price: 4 EUR/sq ft", "usual",
     "unknown-usual"},
    {"usual_of_another", "area: 6 sq ft, waste: usual full-grain-yield, price: 4 EUR/sq ft", "usual", "wrong-usual"},
    {"nothing", "item: leather", "{", "missing-key"},
    {"share_of_nothing", "share: 20 %", "20 %", "missing-key"},
    {"of_without_share", "of: leather, amount: 4 EUR", "of", "missing-key"},
    {"of_what_is_not_there", "share: 20 %, of: latigo", "latigo", "unknown-item"},
    {"of_itself", "item: a, share: 20 %, of: a", "a}", "unknown-item"},
    {"of_later_group", "share: 20 %, of: labour", "labour", "not-before"},
    {"of_later_sum", "share: 20 %, of: making", "making", "not-before"},
    {"same_as_nothing", "area: 6 sq ft, waste: 0 %, price: same as b", "same", "unknown-item"},
    {"unknown_key", "area: 6 sq ft, waist: 0 %, price: 4 EUR/sq ft", "waist", "unknown-key"},
    {"rate_of_material", "rate: 4 EUR/h", "rate", "unknown-key"},
    {"unknown_part", "part: nose, amount: 4 EUR", "part", "unknown-part"},
    {"unknown_material", "material: lether, amount: 4 EUR", "lether", "unknown-concept"},
    {"list_for_a_value", "amount: [4 EUR]", "[4", "wrong-type"},
};
class CostLines : public testing::TestWithParam<LineRow> {};
TEST_P(CostLines, AreToldWithTheirPlace) {
    const std::string line = "   {" + std::string(GetParam().line) + "}";
    std::string want;
    if (!GetParam().code.empty()) {
        const std::size_t at = line.find(GetParam().at);
        ASSERT_NE(at, std::string::npos);
        want = "4:" + std::to_string(at + 1) + " " + std::string(GetParam().code);
    }
    EXPECT_EQ(support::dump_places(issues_of("sample: {what: x, price: 10 EUR}\ncosts:\n  materials:\n" + line + "\n")),
              want);
}
INSTANTIATE_TEST_SUITE_P(Rows, CostLines, testing::ValuesIn(kLines),
                         [](const auto& row) { return std::string(row.param.name); });

// What stands below `costs:` in line 2.
constexpr Row kSections[] = {
    {"no_currency", "sample: {}\ncosts:\n  packing: 1 EUR\n", "3:3 missing-currency"},
    {"unknown_currency", "sample: {}\ncosts:\n  currency: Euro\n", "3:13 unknown-currency"},
    {"exchange_of_its_own", "sample: {price: 1 EUR}\ncosts:\n  exchange: {EUR: 1}\n", "3:14 both-ways"},
    {"exchange_of_nothing", "sample: {price: 1 EUR}\ncosts:\n  exchange: {XXQ: 1}\n", "3:14 unknown-currency"},
    {"exchange_at_nothing", "sample: {price: 1 EUR}\ncosts:\n  exchange: {USD: 0-1}\n", "3:19 not-positive"},
    {"exchange_is_a_text", "sample: {price: 1 EUR}\ncosts:\n  exchange: 0.9\n", "3:13 wrong-type"},
    {"tax_above_all", "sample: {price: 1 EUR}\ncosts:\n  sales_tax: 120 %\n", "3:14 above-100"},
    {"unknown_market", "sample: {price: 1 EUR}\ncosts:\n  sold_in: mars\n", "3:12 unknown-market"},
    {"unknown_group", "sample: {price: 1 EUR}\ncosts:\n  materails: 3 EUR\n", "3:3 unknown-key"},
    {"empty_group", "sample: {price: 1 EUR}\ncosts:\n  materials: []\n", "3:14 missing-key"},
    {"nothing_to_pay", "sample: {price: 1 EUR}\ncosts:\n  hardware: none\n", ""},
    {"two_of_a_name",
     "sample: {price: 1 EUR}\ncosts:\n  materials:\n    - {item: a, amount: 1 EUR}\n    - {item: a, amount: 1 EUR}\n",
     "5:14 duplicate-item"},
    {"rate_per_nothing", "sample: {price: 1 EUR}\ncosts:\n  labour: {time: 5 min, rate: 14 EUR}\n", "3:31 wrong-unit"},
    {"work_at_a_price", "sample: {price: 1 EUR}\ncosts:\n  labour: {time: 5 min, price: 14 EUR/h}\n",
     "3:32 wrong-unit"},
    {"no_duty_base", "sample: {price: 1 EUR}\ncosts:\n  duty: {rate: 3 %}\n", "3:9 no-duty-base"},
    {"no_base_in_japan", "sample: {price: 1 EUR}\ncosts:\n  sold_in: jp\n  duty: {rate: 3 %}\n", "4:9 no-duty-base"},
    {"unknown_base", "sample: {price: 1 EUR}\ncosts:\n  duty: {rate: 3 %, base: retail}\n", "3:27 unknown-base"},
    {"base_of_an_amount", "sample: {price: 1 EUR}\ncosts:\n  duty: {amount: 3 EUR, base: maker-price}\n",
     "3:25 missing-key"},
    {"duty_in_another_currency",
     "sample: {price: 1 EUR}\ncosts:\n  sold_in: us\n  duty: {rate: usual us-leather-handbag}\n",
     "4:16 missing-exchange"},
    {"duty_of_another_market",
     "sample: {price: 1 USD}\ncosts:\n  sold_in: us\n  duty: {rate: usual eu-leather-handbag}\n", "4:16 wrong-market"},
    {"duty_of_another_market_with_a_base",
     "sample: {price: 1 USD}\ncosts:\n  sold_in: us\n  duty: {rate: usual eu-belt, base: maker-price}\n",
     "4:16 wrong-market"},
    {"right_duty_of_the_union", "sample: {price: 1 USD}\ncosts:\n  sold_in: it\n  duty: {rate: usual eu-belt}\n", ""},
    {"right_duty_where_no_market_is_known",
     "sample: {price: 1 USD}\ncosts:\n  duty: {rate: usual eu-belt, base: maker-price}\n", ""},
    {"of_one_twice",
     "sample: {price: 1 EUR}\ncosts:\n  labour: 2 EUR\n  overhead: {share: 9 %, of: [labour, labour]}\n",
     "4:39 both-ways"},
    {"of_a_sum_and_its_part",
     "sample: {price: 1 EUR}\ncosts:\n  labour: 2 EUR\n  margin: {share: 9 %, of: [making, labour]}\n",
     "4:37 both-ways"},
    {"of_a_line_and_its_group",
     "sample: {price: 1 EUR}\ncosts:\n  labour: {item: a, amount: 2 EUR}\n  margin: {share: 9 %, of: [a, labour]}\n",
     "4:32 both-ways"},
    {"of_two_sums",
     "sample: {price: 1 EUR}\ncosts:\n  labour: 2 EUR\n  fees: {share: 9 %, of: [making, maker-price]}\n",
     "4:35 both-ways"},
    {"right_of_two_lines_and_a_group",
     "sample: {price: 1 EUR}\ncosts:\n  materials: 1 EUR\n  labour: [{item: a, amount: 2 EUR}, {item: b, amount: 2 "
     "EUR}]\n  margin: {share: 9 %, of: [a, b, materials]}\n",
     ""},
    {"unknown_duty", "sample: {price: 1 EUR}\ncosts:\n  sold_in: us\n  duty: {rate: usual us-bag}\n",
     "4:16 unknown-usual"},
    {"every_fault_at_once",
     "sample: {price: 1 EUR}\ncosts:\n  sales_tax: 22\n  packing: 1\n  labour: {time: 5, rate: 14 EUR/h}\n",
     "3:14 missing-unit; 4:12 missing-currency; 5:18 missing-unit"},
    {"price_without_currency", "sample: {price: 189}\n", "1:17 bad-price"},
    {"price_in_dollars", "sample: {price: $189}\n", "1:17 bad-price"},
    {"price_for_a_part", "sample: {price: 189 EUR/m}\n", "1:17 bad-price"},
    {"costs_are_a_list", "sample: {}\ncosts: [1]\n", "2:8 wrong-type"},
};
class CostSections : public testing::TestWithParam<Row> {};
TEST_P(CostSections, AreToldWithTheirPlace) {
    EXPECT_EQ(support::dump_places(issues_of(std::string(GetParam().line))), GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, CostSections, testing::ValuesIn(kSections),
                         [](const auto& row) { return std::string(row.param.name); });

TEST(CostFaults, AHundredLinesAreEnough) {
    std::string text = "sample: {price: 1 EUR}\ncosts:\n  materials:\n";
    for (int i = 0; i < 103; ++i) text += "    - {item: i" + std::to_string(i) + ", amount: 1 EUR}\n";
    EXPECT_EQ(support::dump_places(issues_of(text)), "104:7 too-many-lines");
}

// Each group once, though a line has the name of its group, and the sums that stand before.
TEST(CostFaults, NameWhatAShareMayBeOf) {
    const auto issues = issues_of(
        "sample: {price: 1 EUR}\ncosts: {overhead: 1 EUR, packing: 1 EUR, margin: {share: 9 %, of: nothing at all}}\n");
    ASSERT_EQ(issues.size(), 1U);
    EXPECT_EQ(issues[0].hint, "one of materials, hardware, labour, overhead, packing, making");
}

// The first fault, whole: what to write stands in its hint.
constexpr Row kSaid[] = {
    {"thousands", "sample: {price: '1,349.00 USD'}\n",
     "decimal-comma: the comma in `1,349.00` may part thousands (write `1349.00` for thousands)"},
    {"thousands_or_decimals", "sample: {price: '1,349 USD'}\n",
     "decimal-comma: the comma in `1,349` may be a decimal comma or part thousands (write `1.349` for a decimal comma, "
     "`1349` for thousands)"},
    {"millions", "sample: {price: '1,234,567 USD'}\n",
     "decimal-comma: the comma in `1,234,567` may part thousands (write `1234567` for thousands)"},
    {"decimals", "sample: {price: '349,00 USD'}\n",
     "decimal-comma: the comma in `349,00` may be a decimal comma (write `349.00` for one number)"},
    {"comma_in_braces", "sample: {price: 1 EUR}\ncosts: {materials: {length: 1 m, price: same as x, 20 EUR/sq ft}}\n",
     "unknown-key: unknown key `20 EUR/sq ft` (a comma ends the value before it in braces; decimals have a point, as "
     "in "
     "`4.20`)"},
    {"comma_in_an_exchange", "sample: {price: 1 EUR}\ncosts: {exchange: {86}}\n",
     "unknown-key: the key `86` is no currency (a comma ends the value before it in braces; decimals have a point, as "
     "in `4.20`)"},
    {"yield_without_percent", "sample: {price: 1 EUR}\ncosts: {materials: {area: 1 m2, cutting_yield: 70}}\n",
     "missing-unit: `70` has no unit, and a share needs one (write `70 %`)"},
    {"yield_as_a_part_of_one", "sample: {price: 1 EUR}\ncosts: {materials: {area: 1 m2, cutting_yield: 0.7}}\n",
     "missing-unit: `0.7` has no unit, and a share needs one (write `0.7 %`, or `70 %` where 1 is all of it)"},
    {"tax_without_percent", "sample: {price: 1 EUR}\ncosts: {sales_tax: 8.25}\n",
     "missing-unit: `8.25` has no unit, and a share needs one (write `8.25 %`)"},
    {"an_area", "sample: {price: 1 EUR}\ncosts: {materials: {area: 1 m}}\n",
     "wrong-unit: `m` is a unit of length, where an area is wanted (one of dm\xC2\xB2, cm\xC2\xB2, m\xC2\xB2, sq ft, "
     "sq "
     "in, sq yd)"},
    {"euro", "sample: {price: 349.00 EURO}\n",
     "bad-price: 'EURO' in `349.00 EURO` is no code of a currency (did you mean `EUR`?)"},
    {"currency_by_name", "sample: {}\ncosts: {currency: Euro}\n",
     "unknown-currency: 'Euro' is no code of a currency (did you mean `EUR`?)"},
};
class CostHints : public testing::TestWithParam<Row> {};
TEST_P(CostHints, SayWhatToWrite) {
    const std::vector<Issue> issues = issues_of(std::string(GetParam().line));
    std::string all;
    for (const Issue& issue : issues) {
        all.append(issue.code).append(": ").append(issue.message).append(" (").append(issue.hint).append(")\n");
    }
    EXPECT_NE(all.find(std::string(GetParam().want) + '\n'), std::string::npos) << all;
}
INSTANTIATE_TEST_SUITE_P(Rows, CostHints, testing::ValuesIn(kSaid),
                         [](const auto& row) { return std::string(row.param.name); });

// A quarter of a hide at 200 are 50, with the unit and without.
TEST(CostFaults, ReadABareNumberOfHides) {
    for (const char* const hides : {"0.25", "0.25 hides"}) {
        const Dossier dossier = support::dossier_of(
            "sample: {price: 1 EUR}\ncosts: {materials: {hides: " + std::string(hides) + ", price: 200 EUR/hide}}\n");
        EXPECT_NEAR(estimate_cost(support::built_in_evidence(), dossier).total.value, 50, 1e-12) << hides;
    }
}

TEST(CostFaults, NameTheCodesOfADollar) {
    const auto issues = issues_of("sample: {price: $189}\n");
    ASSERT_EQ(issues.size(), 1U);
    EXPECT_EQ(issues[0].hint, "write the code that is meant: USD, CAD, AUD, NZD, HKD, SGD, MXN, ARS");
}

struct ChangeRow {
    std::string_view name, item, key, value, want;
};
constexpr ChangeRow kChanges[] = {
    {"right", "body", "price", "9 EUR/sq ft", ""},
    {"right_waste_for_yield", "body", "waste", "30 %", ""},
    {"right_gap", "labour", "amount", "20 EUR", ""},
    {"right_exchange", "exchange", "USD", "0.9", ""},
    {"right_tax", "costs", "sales_tax", "19 %", ""},
    {"right_price", "sample", "price", "12 EUR", ""},
    {"unknown_item", "bodi", "price", "9 EUR/sq ft", "unknown-item"},
    {"unknown_key", "body", "colour", "red", "unknown-key"},
    {"unknown_rate", "exchange", "GBP", "0.9", "unknown-key"},
    {"no_money", "body", "price", "9", "missing-currency"},
    {"wrong_unit", "body", "price", "9 EUR/kg", "wrong-unit"},
    {"no_rate", "body", "price", "9 GBP/sq ft", "missing-exchange"},
    {"two_ways", "body", "length", "2 m", "both-ways"},
    {"share_of_nothing", "packing", "share", "3 %", "both-ways"},
    {"price_of_a_part", "sample", "price", "3 EUR/sq ft", "bad-price"},
    {"price_of_work", "sample", "price", "60 EUR/h", "bad-price"},
    // 'lining' is an area without a hide, at the price of 'skin', which counts hides.
    {"what_follows", "skin", "price", "200 EUR/hide", "missing-key"},
    {"right_what_follows", "skin", "price", "6 EUR/sq ft", ""},
};
class CostChanges : public testing::TestWithParam<ChangeRow> {};
TEST_P(CostChanges, AreMadeOrTold) {
    const ChangeRow& row = GetParam();
    const Dossier dossier = support::dossier_of(
        "sample: {price: 10 EUR}\ncosts:\n  exchange: {USD: 0.86-0.88}\n  packing: 1 EUR\n"
        "  materials:\n    - {item: body, area: 2 sq ft, cutting_yield: 75 %, price: 3 USD/sq ft}\n"
        "    - {item: skin, price: 5 EUR/sq ft}\n"
        "    - {item: lining, area: 2 sq ft, allowance: 0 %, price: same as skin}\n");
    const auto cost = estimate_cost(support::built_in_evidence(), dossier,
                                    {{std::string(row.item), std::string(row.key), std::string(row.value)}});
    ASSERT_EQ(static_cast<bool>(cost), row.want.empty());
    if (!cost) {
        EXPECT_EQ(cost.issues()[0].code, row.want);
    }
}
INSTANTIATE_TEST_SUITE_P(Rows, CostChanges, testing::ValuesIn(kChanges),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace grainside
