#include "report/html/survey_plots.h"

#include <fmt/format.h>

#include <string>

#include "report/html/plot.h"
#include "report/survey_text.h"

namespace grainside::report {
namespace {

constexpr double kPercent = 100;
constexpr double kGuideAt = 17;  // below the text of a row

double share(std::uint64_t count, std::uint64_t of) {
    return of == 0 ? 0 : kPercent * static_cast<double>(count) / static_cast<double>(of);
}

}  // namespace

void write_rate_plot(HtmlWriter& html, const Survey& survey, std::span<const SurveyGroup> sellers) {
    const SurveyRate& all = survey.all.rates[asked_grade(survey)];
    const PlotNames names{"rates", "Rates of sellers",
                          fmt::format("A row a seller: its rate as a dot, the {:g} % limits as a line with ends. The "
                                      "upright line is the rate of all, {}. The table below has the figures.",
                                      kPercent * survey.options.confidence, percent_of(all.rate))};
    Plot plot(html, names, kPercent, sellers.size(), kPlotAxis);
    double top = 0;
    for (const SurveyGroup& seller : sellers) {
        const SurveyRate& rate = seller.rates[asked_grade(survey)];
        plot.label(top, group_name(seller), "plain");
        plot.value(top, fmt::format("{} ({})", percent_of(rate.rate), limits_of(rate)), "plain");
        // Beside the marks only, so that it crosses no name.
        plot.guide(top + kGuideAt, top + kPlotRow, kPercent * all.rate);
        plot.whisker(top, kPercent * rate.low, kPercent * rate.high);
        plot.dot(top, kPercent * rate.rate);
        top += kPlotRow;
    }
    plot.axis(top);
    plot.end();
}

void write_grade_plot(HtmlWriter& html, const Survey& survey, std::span<const SurveyGroup> sellers) {
    const std::vector<Grade> grades = shown_grades(survey);
    std::string order;
    for (const Grade grade : grades) order += fmt::format("{}, ", name_of(grade));
    const PlotNames names{"grades-of-sellers", "Grades of sellers",
                          fmt::format("A row a seller, its listings by their worst finding, from the left: {}none. The "
                                      "figures above each bar are in the same order.",
                                      order)};
    Plot plot(html, names, kPercent, sellers.size(), kPlotAxis);
    double top = 0;
    for (const SurveyGroup& seller : sellers) {
        plot.label(top, group_name(seller), "plain");
        std::string figures;
        double from = 0;
        for (const Grade grade : grades) {
            const std::uint64_t count = seller.by_worst[static_cast<std::size_t>(grade)];
            figures += fmt::format("{} / ", count);
            const double to = from + share(count, seller.listings);
            if (count != 0) plot.bar(top, from, to, "piece " + std::string(name_of(grade)));
            from = to;
        }
        const std::uint64_t clean = seller.by_worst.back();
        if (clean != 0) plot.bar(top, from, kPercent, "piece open");
        plot.value(top, fmt::format("{}{}", figures, clean), "plain");
        top += kPlotRow;
    }
    plot.axis(top);
    plot.end();
}

}  // namespace grainside::report
