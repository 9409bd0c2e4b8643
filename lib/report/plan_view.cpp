// write_plan_view: the tests to make, for people.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <string>
#include <string_view>
#include <vector>

#include "evidence/dossier_data.h"
#include "grainside/dossier_report.h"
#include "report/evidence_text.h"
#include "report/plain_lines.h"
#include "report/view_text.h"

namespace grainside {
inline namespace v0 {

using report::Colours;
using report::counted;

namespace {

std::string effort_text(const PlannedTest& test) {
    std::string text = fmt::format("{:g} min", test.minutes);
    if (test.cost > 0) text += fmt::format(", about {:g} euro", test.cost);
    text += test.harm == "none" ? "; harmless" : fmt::format("; harm to the sample: {}", test.harm);
    if (test.who != "anyone") text += test.who == "laboratory" ? "; by a laboratory" : "; by practised hands";
    return text;
}

}  // namespace

void write_plan_view(const DossierContext& context, const TestPlan& plan, const ViewOptions& options,
                     std::string& out) {
    const Colours colours(options.colour);
    const std::size_t width = report::width_of(options);
    report::append_sample_heading(context, colours, width, out);
    if (plan.questions == 0) {
        const bool listing = context.dossier.listing() != nullptr;
        if (listing) {
            out += "Nothing is open: every claim that a test could settle is decided.\n\n";
        } else {
            out += context.dossier.data().parts.empty()
                       ? "Nothing to plan: the dossier has neither a listing nor a part.\n\n"
                       : "Nothing to plan: without a listing, no test of the book tells what these parts are.\n\n";
        }
        return;
    }
    if (plan.tests.empty()) {
        report::append_wrapped(
            out,
            fmt::format("{} open, and no test of the book is expected to tell more about {}.",
                        counted(plan.questions, "question is", "questions are"), plan.questions == 1 ? "it" : "them"),
            0, width);
        out += '\n';
        return;
    }
    report::LabelledLines lines(colours, width, out);
    for (std::size_t i = 0; i < plan.tests.size(); ++i) {
        const PlannedTest& test = plan.tests[i];
        out += fmt::format("{:>3}. ", i + 1);
        out += colours.heading();
        out += report::one_line(test.title, width - 5);
        out += colours.plain();
        out += fmt::format("\n     {}{}\n", name_of(test.part), i == plan.next ? ", make this one first" : "");
        lines.write("effort", effort_text(test));
        lines.write("about", fmt::format("{}", fmt::join(test.about, ", ")));
        lines.write("tells", fmt::format("{:.2f} bits expected, on top of what was planned before", test.bits));
        std::string_view label = "caution";
        for (const std::string& caution : test.cautions) {
            lines.write(label, caution);
            label = {};
        }
    }
    out += '\n';
    report::append_wrapped(out,
                           fmt::format("{}; {}, {:g} min and about {:g} euro, should decide about {:.1f} of them.",
                                       counted(plan.questions, "open question", "open questions"),
                                       counted(plan.tests.size(), "test", "tests"), plan.minutes, plan.cost,
                                       plan.decided_after * static_cast<double>(plan.questions)),
                           0, width);
    report::append_wrapped(
        out, "Minutes, fees and likelihoods are common practice; make the plan anew after each test.", 0, width);
    out += '\n';
}

}  // namespace v0
}  // namespace grainside
