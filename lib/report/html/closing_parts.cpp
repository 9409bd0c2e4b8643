// What to do next and what to know: tests, wording, cautions, and what makes the report reproducible.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <string>

#include "report/content_text.h"
#include "report/fixed_texts.h"
#include "report/html/page_parts.h"
#include "report/plan_text.h"

namespace grainside::report {

void write_next_tests(const PageContext& page) {
    HtmlWriter& html = page.html;
    const TestPlan& plan = page.content.plan;
    html.begin("section", {{"id", page.id("next")}});
    page.heading(1, "Tests to make next");
    html.element("p", next_tests_text(page.content));
    if (!plan.tests.empty()) {
        html.begin("ol", {{"class", "steps"}});
        for (std::size_t i = 0; i < plan.tests.size(); ++i) {
            const PlannedTest& test = plan.tests[i];
            html.begin("li");
            html.element("strong", fmt::format("{} on the {}", test.title, name_of(test.part)));
            if (i == plan.next) html.text(" (the one to make where only one is made)");
            html.element("span", {{"class", "soft"}},
                         fmt::format(": about {}; {}", fmt::join(test.about, ", "), effort_text(test)));
            html.end();
        }
        html.end();
        html.element("p", {{"class", "small soft"}}, kPlanNote);
    }
    html.end();
}

void write_wordings(const PageContext& page) {
    HtmlWriter& html = page.html;
    html.begin("section", {{"id", page.id("wording")}});
    page.heading(1, "Wording that would pass");
    bool any = false;
    for (const ReportVerdict& verdict : page.content.verdicts) any = any || !verdict.say_instead.empty();
    if (!any) {
        html.element("p", kNoWording);
        html.end();
        return;
    }
    html.element("p", {{"class", "soft"}}, kWordingNote);
    html.begin("table", {{"class", "stack"}});
    html.constant(
        "<thead><tr><th scope=\"col\">Part</th><th scope=\"col\">The listing says</th>"
        "<th scope=\"col\">It could say</th></tr></thead>\n");
    html.begin("tbody");
    for (const ReportVerdict& verdict : page.content.verdicts) {
        if (verdict.say_instead.empty()) continue;
        html.begin("tr");
        html.element("th", {{"scope", "row"}}, name_of(verdict.part));
        html.begin("td");
        html.element("q", shortened(verdict.words.front().text));
        html.end();
        html.element("td", {{"class", "instead"}}, verdict.say_instead);
        html.end();
    }
    html.end();
    html.end();
    html.end();
}

void write_cautions(const PageContext& page) {
    HtmlWriter& html = page.html;
    html.begin("section", {{"id", page.id("cautions")}});
    page.heading(1, "Cautions, and what the tests stand on");
    if (page.content.cautions.empty()) html.element("p", kNoCaution);
    for (const Caution& caution : page.content.cautions) {
        html.begin("div", {{"class", "caution"}});
        html.begin("p");
        html.text(caution.text);
        html.element("span", {{"class", "soft"}}, " (" + caution.methods + ')');
        html.end();
        html.end();
    }
    if (!page.content.methods.empty()) {
        html.begin("ul", {{"class", "plain small"}});
        for (const ReportMethod& method : page.content.methods) {
            html.begin("li");
            html.text(method.title + ": ");
            html.text(sources_text(method.sources));
            html.end();
        }
        html.end();
    }
    html.end();
}

void write_records(const PageContext& page) {
    HtmlWriter& html = page.html;
    html.begin("section", {{"id", page.id("record")}});
    page.heading(1, "To reproduce this report");
    html.begin("table", {{"class", "stack small"}});
    html.begin("tbody");
    for (const RecordLine& line : record_lines(page.content)) {
        html.begin("tr");
        html.element("th", {{"scope", "row"}}, line.label);
        html.element("td", {{"class", line.is_digest ? "code" : "plain"}}, line.value);
        html.end();
    }
    html.end();
    html.end();
    html.end();
}

}  // namespace grainside::report
