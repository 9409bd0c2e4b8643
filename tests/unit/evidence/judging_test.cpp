// The judging policy, and each fault of judging.yaml with its exact place.
#include <gtest/gtest.h>

#include <array>
#include <cstddef>
#include <string>
#include <string_view>

#include "small_evidence.h"

namespace grainside::evidence {
namespace {

TEST(Judging, HoldsSharesOfOne) {
    const Judging judging =
        support::loaded_with("judging.yaml",
                             "decided_at: 90\nfrom_even: 75\nguard: 1.5\nsame_look: 25\n"
                             "slip: {anyone: 4, practised: 2, laboratory: 0.5}\nconflict: 12\n"
                             "plan: {minute: 1, harm: {none: 0, mark: 1, cut: 2, destroy: 3}, least_bits: 0.1}\n")
            .judging;
    EXPECT_DOUBLE_EQ(judging.decided_at, 0.9);
    EXPECT_DOUBLE_EQ(judging.from_even, 0.75);
    EXPECT_DOUBLE_EQ(judging.guard, 1.5);
    EXPECT_DOUBLE_EQ(judging.same_look, 0.25);
    // By hands, in the order of Who.
    EXPECT_DOUBLE_EQ(judging.slip[static_cast<std::size_t>(Who::anyone)], 0.04);
    EXPECT_DOUBLE_EQ(judging.slip[static_cast<std::size_t>(Who::practised)], 0.02);
    EXPECT_DOUBLE_EQ(judging.slip[static_cast<std::size_t>(Who::laboratory)], 0.005);
    EXPECT_DOUBLE_EQ(judging.conflict, 12);
    EXPECT_DOUBLE_EQ(judging.minute_weight, 1);
    EXPECT_EQ(judging.harm_weight, (std::array<double, kHarmCount>{0, 1, 2, 3}));
    EXPECT_DOUBLE_EQ(judging.least_bits, 0.1);
}

struct Row {
    std::string_view name, text, want;
};

// Seven lines, of which one is changed.
constexpr std::string_view kPlan =
    "plan: {minute: 0.5, harm: {none: 0, mark: 5, cut: 20, destroy: 60}, least_bits: 0.02}\n";
constexpr std::string_view kSlip = "slip: {anyone: 2, practised: 1, laboratory: 0.3}\n";
constexpr std::string_view kBeforeSlip = "from_even: 80\nguard: 1\nsame_look: 50\n";
const std::string kBeforePlan = std::string(kBeforeSlip) + std::string(kSlip) + "conflict: 10\n";

constexpr Row kFirst[] = {
    {"right", "decided_at: 95\n", ""},
    {"missing", "", "1:1 missing-key"},
    {"even_odds", "decided_at: 50\n", "1:13 out-of-range"},
    {"certainty", "decided_at: 100\n", "1:13 out-of-range"},
    {"below_even_odds", "decided_at: 40\n", "1:13 out-of-range"},
    {"text", "decided_at: high\n", "1:13 wrong-type"},
    {"unknown_key", "decided_at: 95\ndecide: 3\n", "2:1 unknown-key"},
};
class JudgingFaults : public testing::TestWithParam<Row> {};
TEST_P(JudgingFaults, AreToldWithTheirPlace) {
    EXPECT_EQ(support::faults_with("judging.yaml", std::string(GetParam().text) + kBeforePlan + std::string(kPlan)),
              GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, JudgingFaults, testing::ValuesIn(kFirst),
                         [](const auto& row) { return std::string(row.param.name); });

// In line 2.
constexpr Row kFromEven[] = {
    {"even_odds", "from_even: 50\n", ""},
    {"missing", "", "1:1 missing-key"},
    {"below_even_odds", "from_even: 49\n", "2:12 out-of-range"},
    {"above_all", "from_even: 101\n", "2:12 out-of-range"},
    {"text", "from_even: high\n", "2:12 wrong-type"},
};
class JudgingFromEvenFaults : public testing::TestWithParam<Row> {};
TEST_P(JudgingFromEvenFaults, AreToldWithTheirPlace) {
    EXPECT_EQ(support::faults_with("judging.yaml", "decided_at: 95\n" + std::string(GetParam().text) +
                                                       "guard: 1\nsame_look: 50\n" + std::string(kSlip) +
                                                       "conflict: 10\n" + std::string(kPlan)),
              GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, JudgingFromEvenFaults, testing::ValuesIn(kFromEven),
                         [](const auto& row) { return std::string(row.param.name); });

// In line 5.
constexpr Row kSlips[] = {
    {"none_at_all", "slip: {anyone: 0, practised: 0, laboratory: 0}\n", ""},
    {"missing", "", "1:1 missing-key"},
    {"one_for_all_hands", "slip: 1\n", "5:7 wrong-type"},
    {"hands_missing", "slip: {anyone: 2, practised: 1}\n", "5:7 missing-key"},
    {"unknown_hands", "slip: {anyone: 2, practised: 1, laboratory: 0.3, nobody: 1}\n", "5:50 unknown-key"},
    {"more_often_than_not", "slip: {anyone: 51, practised: 1, laboratory: 0.3}\n", "5:16 out-of-range"},
    {"negative", "slip: {anyone: 2, practised: -1, laboratory: 0.3}\n", "5:30 out-of-range"},
    {"text", "slip: {anyone: 2, practised: 1, laboratory: rare}\n", "5:45 wrong-type"},
};
class JudgingSlipFaults : public testing::TestWithParam<Row> {};
TEST_P(JudgingSlipFaults, AreToldWithTheirPlace) {
    EXPECT_EQ(
        support::faults_with("judging.yaml", "decided_at: 95\n" + std::string(kBeforeSlip) +
                                                 std::string(GetParam().text) + "conflict: 10\n" + std::string(kPlan)),
        GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, JudgingSlipFaults, testing::ValuesIn(kSlips),
                         [](const auto& row) { return std::string(row.param.name); });

// In line 7.
constexpr Row kPlans[] = {
    {"missing", "", "1:1 missing-key"},
    {"no_mapping", "plan: 3\n", "7:7 wrong-type"},
    {"no_harm", "plan: {minute: 1, least_bits: 0.1}\n", "7:7 missing-key"},
    {"a_harm_missing", "plan: {minute: 1, least_bits: 0.1, harm: {none: 0, mark: 1, cut: 2}}\n", "7:42 missing-key"},
    {"harm_upside_down", "plan: {minute: 1, least_bits: 0.1, harm: {none: 0, mark: 9, cut: 2, destroy: 60}}\n",
     "7:66 out-of-range"},
    {"negative_minute", "plan: {minute: -1, least_bits: 0.1, harm: {none: 0, mark: 1, cut: 2, destroy: 3}}\n",
     "7:16 out-of-range"},
};
class JudgingPlanFaults : public testing::TestWithParam<Row> {};
TEST_P(JudgingPlanFaults, AreToldWithTheirPlace) {
    EXPECT_EQ(support::faults_with("judging.yaml", "decided_at: 95\n" + kBeforePlan + std::string(GetParam().text)),
              GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, JudgingPlanFaults, testing::ValuesIn(kPlans),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace grainside::evidence
