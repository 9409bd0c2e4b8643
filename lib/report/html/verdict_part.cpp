// The claims by part: each with its grade, reason, belief, readings, limits, sources and wording.
#include <fmt/format.h>

#include <string>
#include <vector>

#include "report/content_text.h"
#include "report/html/page_parts.h"

namespace grainside::report {
namespace {

constexpr double kBarWidth = 100;
constexpr double kBeliefBarHeight = 8;

class Facts {
public:
    explicit Facts(const PageContext& page) : page_(page), html_(page.html) { html_.begin("dl", {{"class", "facts"}}); }
    void end() { html_.end(); }

    void text(std::string_view label, std::string_view value, std::string_view css = {}) {
        if (value.empty()) return;
        html_.element("dt", label);
        if (css.empty()) {
            html_.element("dd", value);
        } else {
            html_.element("dd", {{"class", css}}, value);
        }
    }

    void list(std::string_view label, const std::vector<std::string>& lines) {
        if (lines.empty()) return;
        html_.element("dt", label);
        html_.begin("dd");
        if (lines.size() == 1) {
            html_.text(lines.front());
        } else {
            html_.begin("ul");
            for (const std::string& line : lines) html_.element("li", line);
            html_.end();
        }
        html_.end();
    }

    void belief(const ReportVerdict& verdict) {
        if (verdict.belief.empty()) return;
        html_.element("dt", "Belief");
        html_.begin("dd");
        html_.begin("svg", {{"class", "belief"},
                            {"viewBox", fmt::format("0 0 {} {}", kBarWidth, kBeliefBarHeight)},
                            {"preserveAspectRatio", "none"},
                            {"aria-hidden", "true"}});
        double at = 0;
        bar(verdict.holds, "true", at);
        bar(verdict.open, "open", at);
        bar(verdict.fails, "false", at);
        html_.end();
        html_.text(verdict.belief);
        html_.end();
    }

    void readings(const std::vector<ReportReading>& readings) {
        if (readings.empty()) return;
        html_.element("dt", "Readings that decided");
        html_.begin("dd");
        html_.begin("ul");
        for (const ReportReading& reading : readings) {
            html_.begin("li");
            write_reading(page_, reading);
            html_.end();
        }
        html_.end();
        html_.end();
    }

    void sources(const std::vector<ReportSource>& sources) {
        if (sources.empty()) return;
        html_.element("dt", sources.size() == 1 ? "Source" : "Sources");
        html_.begin("dd");
        html_.text(sources_text(sources));
        html_.end();
    }

    void rule(const std::string& id) {
        if (id.empty()) return;
        html_.element("dt", "Rule");
        html_.begin("dd");
        html_.element("code", id);
        html_.end();
    }

private:
    void bar(double share, std::string_view css, double& at) {
        if (share <= 0) return;
        html_.shape("rect", {{"class", css},
                             {"x", fmt::format("{:.2f}", at)},
                             {"y", "0"},
                             {"width", fmt::format("{:.2f}", share * kBarWidth)},
                             {"height", fmt::format("{}", kBeliefBarHeight)}});
        at += share * kBarWidth;
    }

    const PageContext& page_;
    HtmlWriter& html_;
};

void write_verdict(const PageContext& page, const ReportVerdict& verdict) {
    HtmlWriter& html = page.html;
    html.begin("article",
               {{"class", "verdict " + std::string(name_of(verdict.grade))}, {"id", page.verdict_id(verdict.number)}});
    html.begin(page.heading_name(3));
    html.element("span", {{"class", "number"}}, std::to_string(verdict.number) + '.');
    write_grade(html, verdict.grade);
    for (std::size_t i = 0; i < verdict.words.size(); ++i) {
        if (i > 0) html.text(", ");
        html.begin("q");
        html.text(shortened(verdict.words[i].text));
        html.end();
    }
    html.end();
    html.element("p", {{"class", "because"}}, verdict.because);
    Facts facts(page);
    facts.text("Say instead", verdict.say_instead, "instead");
    facts.text("Remedy", verdict.remedy);
    facts.text("Reads as", verdict.says);
    facts.text("Stands in", fields_of(verdict));
    facts.text("Against", verdict.against);
    facts.belief(verdict);
    facts.readings(verdict.readings);
    facts.list("Limits", verdict.limits);
    if (verdict.contradictory) {
        facts.text("Alarm", "Readings of this part contradict one another; look again before you publish.");
    }
    facts.list("What would change it", verdict.changes);
    facts.list("What would support it", verdict.would_support);
    facts.text("On file", verdict.on_file);
    facts.sources(verdict.sources);
    facts.rule(verdict.rule);
    facts.end();
    html.end();
}

}  // namespace

void write_verdicts(const PageContext& page) {
    if (page.content.verdicts.empty()) return;
    HtmlWriter& html = page.html;
    html.begin("section", {{"id", page.id("claims")}});
    page.heading(1, "Claims, part by part");
    const ReportVerdict* last = nullptr;
    for (const ReportVerdict& verdict : page.content.verdicts) {
        if (last == nullptr || last->part != verdict.part) page.heading(2, capitalised(name_of(verdict.part)));
        write_verdict(page, verdict);
        last = &verdict;
    }
    html.end();
}

}  // namespace grainside::report
