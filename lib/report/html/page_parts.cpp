#include "report/html/page_parts.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace grainside::report {

std::string_view PageContext::heading_name(int depth) const {
    constexpr std::array<std::string_view, 6> kNames{"h1", "h2", "h3", "h4", "h5", "h6"};
    return kNames[std::min(static_cast<std::size_t>(level + depth - 1), kNames.size() - 1)];
}

void write_grade(HtmlWriter& html, Grade grade) {
    html.element("span", {{"class", "grade " + std::string(name_of(grade))}}, name_of(grade));
}

void write_reading(const PageContext& page, const ReportReading& reading) {
    HtmlWriter& html = page.html;
    html.text(reading.method);
    if (!reading.date.empty()) {
        html.text(", ");
        html.element("time", reading.date);
    }
    html.text(": " + reading.result);
    if (!reading.weight.empty()) html.element("span", {{"class", "soft"}}, " (" + reading.weight + ')');
    if (!reading.note.empty()) html.element("span", {{"class", "soft"}}, "; " + reading.note);
    if (reading.picture == ReportReading::kNoPicture) return;
    html.text("; picture ");
    html.element("code", page.content.pictures[reading.picture].path);
}

}  // namespace grainside::report
