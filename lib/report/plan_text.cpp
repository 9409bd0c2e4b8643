#include "report/plan_text.h"

#include <fmt/format.h>

#include "report/view_text.h"

namespace grainside::report {

std::string effort_text(const PlannedTest& test) {
    std::string text = fmt::format("{:g} min", test.minutes);
    if (test.cost > 0) text += fmt::format(", about {:g} euro", test.cost);
    text += test.harm == "none" ? "; harmless" : fmt::format("; harm to the sample: {}", test.harm);
    if (test.who != "anyone") text += test.who == "laboratory" ? "; by a laboratory" : "; by practised hands";
    return text;
}

namespace {

// The statements that are open without being questions of their own to a test, so that the plan and the verdicts count
// alike.
std::string beside_questions(const TestPlan& plan) {
    if (plan.statements <= plan.questions) return {};
    return fmt::format(
        " {} open in all: what no single test bears out is no question here, and what asks the same is one.",
        counted(plan.statements, "statement is", "statements are"));
}

}  // namespace

std::string plan_summary(const TestPlan& plan, bool has_listing, bool has_parts) {
    if (plan.questions == 0) {
        if (has_listing && plan.statements > 0) {
            return fmt::format("Nothing to plan: {} open, and no single test of the book bears {} out.",
                               counted(plan.statements, "statement is", "statements are"),
                               plan.statements == 1 ? "it" : "any of them");
        }
        if (has_listing) return "Nothing is open: every claim that a test could settle is decided.";
        return has_parts ? "Nothing to plan: without a listing, no test of the book tells what these parts are."
                         : "Nothing to plan: the dossier has neither a listing nor a part.";
    }
    if (plan.tests.empty()) {
        return fmt::format("{} open, and no test of the book is expected to tell more about {}.",
                           counted(plan.questions, "question is", "questions are"),
                           plan.questions == 1 ? "it" : "them") +
               beside_questions(plan);
    }
    return fmt::format("{}; {}, {:g} min and about {:g} euro, should decide about {:.1f} of them.",
                       counted(plan.questions, "open question", "open questions"),
                       counted(plan.tests.size(), "test", "tests"), plan.minutes, plan.cost,
                       plan.decided_after * static_cast<double>(plan.questions)) +
           beside_questions(plan);
}

}  // namespace grainside::report
