// The plots of a survey's page. Thread-safe for distinct writers.
#ifndef GRAINSIDE_REPORT_HTML_SURVEY_PLOTS_H
#define GRAINSIDE_REPORT_HTML_SURVEY_PLOTS_H

#include <span>

#include "grainside/survey_report.h"
#include "report/html/html_writer.h"

namespace grainside::report {

// A dot for the rate of each seller, a whisker for its limits, a line for the rate of all.
void write_rate_plot(HtmlWriter& html, const Survey& survey, std::span<const SurveyGroup> sellers);

// Of each seller, the listings by their worst finding, one share behind the other.
void write_grade_plot(HtmlWriter& html, const Survey& survey, std::span<const SurveyGroup> sellers);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_HTML_SURVEY_PLOTS_H
