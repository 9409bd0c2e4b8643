// The two questions that a reader brings, answered at once.
#include <fmt/format.h>

#include <array>
#include <string>

#include "report/content_text.h"
#include "report/html/page_parts.h"

namespace grainside::report {
namespace {

void write_answer(HtmlWriter& html, std::string_view question, const ShortAnswer& answer) {
    html.begin("div", {{"class", "answer"}});
    html.element("p", {{"class", "question"}}, question);
    html.element("p", {{"class", "reply"}}, answer.reply);
    if (!answer.more.empty()) html.element("p", {{"class", "small"}}, answer.more);
    html.end();
}

void write_counts(const PageContext& page) {
    HtmlWriter& html = page.html;
    html.begin("ul", {{"class", "counts"}});
    for (std::size_t grade = 0; grade < page.content.of_grade.size(); ++grade) {
        const std::size_t count = page.content.of_grade[grade];
        if (count == 0) continue;
        const std::string_view name = name_of(static_cast<Grade>(grade));
        html.begin("li");
        html.element("span", {{"class", "grade " + std::string(name)}}, fmt::format("{} {}", count, name));
        html.end();
    }
    html.end();
}

}  // namespace

void write_answers(const PageContext& page) {
    HtmlWriter& html = page.html;
    html.begin("div", {{"class", "answers"}});
    write_answer(html, "Is it what the seller says?", words_answer(page.content));
    write_answer(html, "Is it worth the price?", price_answer(page.content));
    html.end();
    if (!page.content.verdicts.empty()) write_counts(page);
}

}  // namespace grainside::report
