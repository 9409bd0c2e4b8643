// What each part is by its readings, and every reading on record with its picture.
#include <fmt/format.h>

#include <string>

#include "report/html/page_parts.h"
#include "verdict/percent_text.h"

namespace grainside::report {
namespace {

void write_head(HtmlWriter& html, std::initializer_list<std::string_view> names) {
    html.begin("thead");
    html.begin("tr");
    for (const std::string_view name : names) html.element("th", {{"scope", "col"}}, name);
    html.end();
    html.end();
}

void write_questions(const PageContext& page) {
    if (page.content.questions.empty()) return;
    HtmlWriter& html = page.html;
    page.heading(2, "What the readings show");
    html.begin("table", {{"class", "stack"}});
    write_head(html, {"Part and question", "Likeliest answers"});
    html.begin("tbody");
    for (const ReportQuestion& question : page.content.questions) {
        html.begin("tr");
        html.element("th", {{"scope", "row"}}, fmt::format("{}: {}", name_of(question.part), question.asks));
        html.begin("td");
        for (std::size_t i = 0; i < question.answers.size(); ++i) {
            const ReportAnswer& answer = question.answers[i];
            if (i > 0) html.text("; ");
            html.element(i == 0 ? "strong" : "span",
                         fmt::format("{} {}", answer.name, verdict::percent_text(answer.after)));
            html.element("span", {{"class", "soft"}},
                         fmt::format(" (before any reading {})", verdict::percent_text(answer.before)));
        }
        if (question.contradictory) html.element("p", "Its readings contradict one another.");
        html.end();
        html.end();
    }
    html.end();
    html.end();
}

void write_picture(const PageContext& page, const ReportReading& reading) {
    HtmlWriter& html = page.html;
    if (reading.picture == ReportReading::kNoPicture) return;
    const evidence::PictureFile& picture = page.content.pictures[reading.picture];
    html.element("code", picture.path);
    html.element("span", {{"class", "digest code"}},
                 picture.missing.empty() ? "sha256 " + picture.sha256 : "no digest: " + picture.missing);
}

void write_readings(const PageContext& page) {
    HtmlWriter& html = page.html;
    page.heading(2, "Every reading on record");
    html.begin("table", {{"class", "stack"}});
    const bool pictures = !page.content.pictures.empty();
    if (pictures) {
        write_head(html, {"Part", "Test", "Showed", "Picture"});
    } else {
        write_head(html, {"Part", "Test", "Showed"});
    }
    html.begin("tbody");
    for (const ReportReading& reading : page.content.readings) {
        html.begin("tr");
        html.element("th", {{"scope", "row"}}, name_of(reading.part));
        html.begin("td");
        html.text(reading.method);
        if (!reading.date.empty()) {
            html.text(", ");
            html.element("time", reading.date);
        }
        html.end();
        html.element("td", reading.note.empty() ? reading.result : reading.result + " (" + reading.note + ')');
        if (pictures) {
            html.begin("td");
            write_picture(page, reading);
            html.end();
        }
        html.end();
    }
    html.end();
    html.end();
}

void write_unasked(const PageContext& page) {
    if (page.content.unasked.empty()) return;
    HtmlWriter& html = page.html;
    page.heading(2, "Read, and no claim asked about it");
    html.begin("ul", {{"class", "plain"}});
    for (const ReportReading& reading : page.content.unasked) {
        html.begin("li");
        html.text(std::string(name_of(reading.part)) + ": ");
        write_reading(page, reading);
        html.end();
    }
    html.end();
}

}  // namespace

void write_evidence(const PageContext& page) {
    HtmlWriter& html = page.html;
    html.begin("section", {{"id", page.id("evidence")}});
    page.heading(1, "The evidence");
    if (page.content.readings.empty()) {
        html.element("p", "No test is on record.");
    } else {
        write_questions(page);
        write_readings(page);
        write_unasked(page);
    }
    html.end();
}

}  // namespace grainside::report
