// The judging policy, and each fault of judging.yaml with its exact place.
#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "small_evidence.h"

namespace grainside::evidence {
namespace {

TEST(Judging, HoldsSharesOfOne) {
    const Judging judging =
        support::loaded_with("judging.yaml",
                             "decided_at: 90\nguard: 1.5\nsame_look: 25\nslip: 2\nconflict: 12\n"
                             "plan: {minute: 1, harm: {none: 0, mark: 1, cut: 2, destroy: 3}, least_bits: 0.1}\n")
            .judging;
    EXPECT_DOUBLE_EQ(judging.decided_at, 0.9);
    EXPECT_DOUBLE_EQ(judging.guard, 1.5);
    EXPECT_DOUBLE_EQ(judging.same_look, 0.25);
    EXPECT_DOUBLE_EQ(judging.slip, 0.02);
    EXPECT_DOUBLE_EQ(judging.conflict, 12);
    EXPECT_DOUBLE_EQ(judging.minute_weight, 1);
    EXPECT_EQ(judging.harm_weight, (std::array<double, kHarmCount>{0, 1, 2, 3}));
    EXPECT_DOUBLE_EQ(judging.least_bits, 0.1);
}

struct Row {
    std::string_view name, text, want;
};

// Six lines, of which one is changed.
constexpr std::string_view kPlan =
    "plan: {minute: 0.5, harm: {none: 0, mark: 5, cut: 20, destroy: 60}, least_bits: 0.02}\n";
constexpr std::string_view kBeforePlan = "guard: 1\nsame_look: 50\nslip: 1\nconflict: 10\n";

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
    EXPECT_EQ(support::faults_with("judging.yaml",
                                   std::string(GetParam().text) + std::string(kBeforePlan) + std::string(kPlan)),
              GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, JudgingFaults, testing::ValuesIn(kFirst),
                         [](const auto& row) { return std::string(row.param.name); });

constexpr Row kPlans[] = {
    {"missing", "", "1:1 missing-key"},
    {"no_mapping", "plan: 3\n", "6:7 wrong-type"},
    {"no_harm", "plan: {minute: 1, least_bits: 0.1}\n", "6:7 missing-key"},
    {"a_harm_missing", "plan: {minute: 1, least_bits: 0.1, harm: {none: 0, mark: 1, cut: 2}}\n", "6:42 missing-key"},
    {"harm_upside_down", "plan: {minute: 1, least_bits: 0.1, harm: {none: 0, mark: 9, cut: 2, destroy: 60}}\n",
     "6:66 out-of-range"},
    {"negative_minute", "plan: {minute: -1, least_bits: 0.1, harm: {none: 0, mark: 1, cut: 2, destroy: 3}}\n",
     "6:16 out-of-range"},
};
class JudgingPlanFaults : public testing::TestWithParam<Row> {};
TEST_P(JudgingPlanFaults, AreToldWithTheirPlace) {
    EXPECT_EQ(support::faults_with("judging.yaml",
                                   "decided_at: 95\n" + std::string(kBeforePlan) + std::string(GetParam().text)),
              GetParam().want);
}
INSTANTIATE_TEST_SUITE_P(Rows, JudgingPlanFaults, testing::ValuesIn(kPlans),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace grainside::evidence
