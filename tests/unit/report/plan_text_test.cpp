// The sentence under a plan: it counts open statements as the verdicts do.
#include "report/plan_text.h"

#include <gtest/gtest.h>

namespace grainside::report {
namespace {

TestPlan plan_of(std::size_t questions, std::size_t statements, std::size_t tests) {
    TestPlan plan;
    plan.questions = questions;
    plan.statements = statements;
    plan.tests.resize(tests);
    return plan;
}

TEST(PlanSummary, SaysNoMoreWhereEveryOpenStatementIsAQuestion) {
    EXPECT_EQ(plan_summary(plan_of(2, 2, 1), true, true),
              "2 open questions; 1 test, 0 min and about 0 euro, should decide about 0.0 of them.");
}

TEST(PlanSummary, TellsOfStatementsThatAreNoQuestions) {
    EXPECT_EQ(plan_summary(plan_of(4, 5, 1), true, true),
              "4 open questions; 1 test, 0 min and about 0 euro, should decide about 0.0 of them. 5 statements are "
              "open in all: what no single test bears out is no question here, and what asks the same is one.");
    EXPECT_EQ(plan_summary(plan_of(1, 2, 0), true, true),
              "1 question is open, and no test of the book is expected to tell more about it. 2 statements are open "
              "in all: what no single test bears out is no question here, and what asks the same is one.");
}

TEST(PlanSummary, DoesNotCallNothingOpenWhatNoTestBearsOut) {
    EXPECT_EQ(plan_summary(plan_of(0, 1, 0), true, true),
              "Nothing to plan: 1 statement is open, and no single test of the book bears it out.");
    EXPECT_EQ(plan_summary(plan_of(0, 2, 0), true, true),
              "Nothing to plan: 2 statements are open, and no single test of the book bears any of them out.");
    EXPECT_EQ(plan_summary(plan_of(0, 0, 0), true, true),
              "Nothing is open: every claim that a test could settle is decided.");
}

}  // namespace
}  // namespace grainside::report
