// Bad entries of costs/*.yaml, each with the exact place.
#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "evidence/evidence_data.h"
#include "small_evidence.h"

namespace grainside::evidence {
namespace {

struct Row {
    std::string_view name, entry, want;
};

// Entries from line 2 on; the dollar stands in line 1.
constexpr Row kRows[] = {
    {"right_currency", "- {currency: EUR, name: euro, digits: 2, symbol: E}", ""},
    {"right_usual", "- {usual: a, title: T, input: price, range: 2-3 USD/sq ft, sources: [law]}", ""},
    {"right_duty", "- {duty: a, title: T, market: eu, rate: 3 %, sources: [law]}", ""},
    {"right_brackets",
     "- {duty: a, title: T, market: eu, brackets: [{up_to: 20 USD, rate: 9 %}, {rate: 8 %}], sources: [law]}", ""},
    {"right_customs", "- {customs: eu, base: with-freight, because: B, sources: [law]}", ""},
    {"right_expected", "- {expected: [materials, labour], sources: [law]}", ""},
    {"currency_twice", "- {currency: USD, name: dollar, digits: 2}", "2:14 duplicate-currency"},
    {"no_code", "- {currency: Euro, name: euro, digits: 2}", "2:14 bad-currency"},
    {"many_digits", "- {currency: EUR, name: euro, digits: 9}", "2:39 out-of-range"},
    {"no_range", "- {usual: a, title: T, input: price, range: 2 USD/sq ft, sources: [law]}", "2:45 bad-range"},
    {"range_without_unit", "- {usual: a, title: T, input: area, range: 2-3, sources: [law]}", "2:44 missing-unit"},
    {"unknown_input", "- {usual: a, title: T, input: colour, range: 2-3, sources: [law]}", "2:31 unknown-input"},
    {"unknown_group", "- {usual: a, title: T, input: share, range: 2-3 %, groups: [skin], sources: [law]}",
     "2:61 unknown-group"},
    {"unknown_source", "- {usual: a, title: T, input: share, range: 2-3 %, sources: [nobody]}", "2:62 unknown-source"},
    {"no_source", "- {usual: a, title: T, input: share, range: 2-3 %}", "2:3 missing-key"},
    {"bad_id", "- {usual: A, title: T, input: share, range: 2-3 %, sources: [law]}", "2:11 bad-id"},
    {"two_usual",
     "- {usual: a, title: T, input: share, range: 2-3 %, sources: [law]}\n"
     "- {usual: a, title: T, input: share, range: 2-3 %, sources: [law]}",
     "3:11 duplicate-usual"},
    {"both_rates", "- {duty: a, title: T, market: eu, rate: 3 %, brackets: [{rate: 8 %}], sources: [law]}",
     "2:3 both-ways"},
    {"open_bracket_first",
     "- {duty: a, title: T, market: eu, brackets: [{rate: 9 %}, {up_to: 20 USD, rate: 8 %}], sources: [law]}",
     "2:45 bad-bracket"},
    {"falling_brackets",
     "- {duty: a, title: T, market: eu, brackets: [{up_to: 20 USD, rate: 9 %}, {up_to: 10 USD, rate: 8 %}, {rate: 1 "
     "%}], sources: [law]}",
     "2:45 bad-bracket"},
    {"rate_is_a_range", "- {duty: a, title: T, market: eu, rate: 3-4 %, sources: [law]}", "2:41 bad-bracket"},
    {"unknown_market", "- {duty: a, title: T, market: mars, rate: 3 %, sources: [law]}", "2:31 unknown-market"},
    {"unknown_base", "- {customs: eu, base: retail, because: B, sources: [law]}", "2:23 unknown-base"},
    {"no_kind", "- {price: 3 USD}", "2:3 missing-key"},
};
class CostEntries : public testing::TestWithParam<Row> {};
TEST_P(CostEntries, AreToldWithTheirPlace) {
    const std::string text =
        "- {currency: USD, name: dollar, digits: 2, symbol: $}\n" + std::string(GetParam().entry) + "\n";
    EXPECT_EQ(support::faults_with("costs/some.yaml", text), GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, CostEntries, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.name); });

// Money is read with the currencies of the whole book, whatever the order of the files.
TEST(CostEntries, KnowCurrenciesThatStandBehindThem) {
    const EvidenceData data = support::loaded_with(
        {{"costs/a.yaml", "- {usual: a, title: T, input: price, range: 2-3 USD/m, sources: [law]}\n"},
         {"costs/b.yaml", "- {currency: USD, name: dollar, digits: 2}\n"}});
    ASSERT_EQ(data.costs.usual.size(), 1U);
    EXPECT_EQ(data.costs.usual[0].range.currency, "USD");
}

}  // namespace
}  // namespace grainside::evidence
