// What the sample costs to make, and how its price stands to that.
#include <fmt/format.h>

#include <string>
#include <vector>

#include "report/content_text.h"
#include "report/cost_facts.h"
#include "report/fixed_texts.h"
#include "report/html/cost_plots.h"
#include "report/html/page_parts.h"

namespace grainside::report {
namespace {

void write_table(const PageContext& page) {
    HtmlWriter& html = page.html;
    const ReportCost& cost = page.content.cost;
    html.begin("table", {{"class", "money"}});
    html.element("caption", "In " + cost.estimate.currency + "; the middle value, and where 95 % lies");
    html.constant(
        "<thead><tr><th scope=\"col\">What</th><th scope=\"col\" class=\"number\">Middle</th>"
        "<th scope=\"col\" class=\"number\">95 % within</th></tr></thead>\n");
    html.begin("tbody");
    for (const CostStep& step : steps_of(cost.estimate)) {
        const bool is_sum = step.line == nullptr;
        if (is_sum) {
            html.begin("tr", {{"class", "sum"}});
        } else {
            html.begin("tr");
        }
        html.begin("th", {{"scope", "row"}});
        html.text(is_sum ? capitalised(step.text) : step.text);
        if (!is_sum) html.element("span", {{"class", "basis"}}, step.line->basis);
        html.end();
        html.element("td", {{"class", "number"}}, money_text(cost.style, step.amount.value));
        html.element("td", {{"class", "number"}},
                     step.amount.u > 0 ? range_text(cost.style, step.amount) : std::string("exact"));
        html.end();
    }
    html.end();
    html.end();
}

void write_figure(const PageContext& page, std::string_view caption, void (*plot)(const PageContext&)) {
    page.html.begin("figure");
    page.html.element("figcaption", caption);
    plot(page);
    page.html.end();
}

void write_list(const PageContext& page, std::string_view title, const std::vector<std::string>& lines) {
    if (lines.empty()) return;
    page.heading(2, title);
    page.html.begin("ul", {{"class", "plain"}});
    for (const std::string& line : lines) page.html.element("li", line);
    page.html.end();
}

}  // namespace

void write_price(const PageContext& page) {
    HtmlWriter& html = page.html;
    const ReportCost& cost = page.content.cost;
    html.begin("section", {{"id", page.id("price")}});
    page.heading(1, "Cost and price");
    if (!cost.estimate.on_record) {
        html.element("p", "The dossier holds no costs.");
        html.end();
        return;
    }
    for (const std::string& line : price_lines(cost.estimate, cost.style)) html.element("p", line);
    if (cost.estimate.multiple) {
        write_figure(page, "The price paid without sales tax, in multiples of the total", write_multiple_plot);
    }
    write_figure(page, "How the total comes together, in " + cost.estimate.currency, write_build_up_plot);
    write_table(page);
    write_list(page, "What makes the total uncertain", driver_lines(cost.estimate));
    write_list(page, "What is missing", gap_lines(cost.estimate));
    write_list(page, "What is unusual", unusual_lines(cost.estimate));
    write_list(page, "Remarks", cost.estimate.remarks);
    if (!cost.sources.empty()) {
        html.begin("p", {{"class", "small soft"}});
        html.text("Ranges and rates of the book stand on: " + sources_text(cost.sources) + ".");
        html.end();
    }
    html.element("p", {{"class", "small soft"}}, kPriceNote);
    html.end();
}

}  // namespace grainside::report
