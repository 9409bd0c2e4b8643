#include "report/html/page_frame.h"

#include <cstddef>

#include "report/fixed_texts.h"
#include "report/html/page_parts.h"

namespace grainside::report {
namespace {

constexpr std::string_view kStyle =
#include "page_style.inc"
    ;
constexpr std::size_t kGradeCount = 6;

}  // namespace

void begin_page(HtmlWriter& html, std::string_view title, std::string_view skip) {
    html.constant("<!DOCTYPE html>\n");
    html.begin("html", {{"lang", "en"}});
    html.begin("head");
    html.constant(
        "<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
    html.element("title", title);
    html.constant("<style>\n");
    html.constant(kStyle);
    html.constant("</style>\n");
    html.end();
    html.begin("body");
    html.element("a", {{"class", "skip"}, {"href", "#content"}}, skip);
    html.constant("\n");
}

void end_page(HtmlWriter& html) {
    html.end();
    html.end();
}

void write_grade_meanings(HtmlWriter& html) {
    html.begin("dl", {{"class", "facts"}});
    for (std::size_t grade = 0; grade < kGradeCount; ++grade) {
        html.begin("dt");
        write_grade(html, static_cast<Grade>(grade));
        html.end();
        html.element("dd", meaning_of(static_cast<Grade>(grade)));
    }
    html.end();
}

}  // namespace grainside::report
