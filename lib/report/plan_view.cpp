// write_plan_view: the tests to make, for people.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <string>
#include <string_view>
#include <vector>

#include "evidence/dossier_data.h"
#include "grainside/dossier_report.h"
#include "report/evidence_text.h"
#include "report/fixed_texts.h"
#include "report/plain_lines.h"
#include "report/plan_text.h"
#include "report/view_text.h"

namespace grainside {
inline namespace v0 {

using report::Colours;

void write_plan_view(const DossierContext& context, const TestPlan& plan, const ViewOptions& options,
                     std::string& out) {
    const Colours colours(options.colour);
    const std::size_t width = report::width_of(options);
    report::append_sample_heading(context, colours, width, out);
    const std::string summary =
        report::plan_summary(plan, context.dossier.listing() != nullptr, !context.dossier.data().parts.empty());
    if (plan.tests.empty()) {
        report::append_wrapped(out, summary, 0, width);
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
        lines.write("effort", report::effort_text(test));
        lines.write("about", fmt::format("{}", fmt::join(test.about, ", ")));
        lines.write("tells", fmt::format("{:.2f} bits expected, on top of what was planned before", test.bits));
        std::string_view label = "caution";
        for (const std::string& caution : test.cautions) {
            lines.write(label, caution);
            label = {};
        }
    }
    out += '\n';
    report::append_wrapped(out, summary, 0, width);
    report::append_wrapped(out, report::kPlanNote, 0, width);
    out += '\n';
}

}  // namespace v0
}  // namespace grainside
