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

std::string plan_summary(const TestPlan& plan, bool has_listing, bool has_parts) {
    if (plan.questions == 0) {
        if (has_listing) return "Nothing is open: every claim that a test could settle is decided.";
        return has_parts ? "Nothing to plan: without a listing, no test of the book tells what these parts are."
                         : "Nothing to plan: the dossier has neither a listing nor a part.";
    }
    if (plan.tests.empty()) {
        return fmt::format("{} open, and no test of the book is expected to tell more about {}.",
                           counted(plan.questions, "question is", "questions are"),
                           plan.questions == 1 ? "it" : "them");
    }
    return fmt::format("{}; {}, {:g} min and about {:g} euro, should decide about {:.1f} of them.",
                       counted(plan.questions, "open question", "open questions"),
                       counted(plan.tests.size(), "test", "tests"), plan.minutes, plan.cost,
                       plan.decided_after * static_cast<double>(plan.questions));
}

}  // namespace grainside::report
