#include "report/html/cost_plots.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

#include "report/content_text.h"
#include "report/cost_facts.h"
#include "report/html/plot.h"

namespace grainside::report {
namespace {

constexpr double kRoomAtTheEnd = 1.03;

}  // namespace

void write_build_up_plot(const PageContext& page) {
    const ReportCost& cost = page.content.cost;
    const std::vector<CostStep> steps = steps_of(cost.estimate);
    double most = 0;
    for (const CostStep& step : steps) {
        most = std::max({most, step.begins_at + step.amount.high, step.begins_at + step.amount.value});
    }
    most *= kRoomAtTheEnd;
    const PlotNames names{page.id("build-up"), "Cost build-up",
                          fmt::format("{} lines, one behind the other, to a total of {}.", cost.estimate.lines.size(),
                                      spread_text(cost.style, cost.estimate.total))};
    Plot plot(page.html, names, most, steps.size(), 0);
    double top = 0;
    for (const CostStep& step : steps) {
        const bool is_sum = step.line == nullptr;
        plot.label(top, is_sum ? capitalised(step.text) : step.text, is_sum ? "strong" : "plain");
        plot.value(top, money_text(cost.style, step.amount.value), is_sum ? "strong" : "plain");
        plot.bar(top, step.begins_at, step.begins_at + step.amount.value, is_sum ? "total" : "bar");
        if (step.amount.u > 0) plot.whisker(top, step.begins_at + step.amount.low, step.begins_at + step.amount.high);
        top += kPlotRow;
    }
    plot.end();
}

void write_multiple_plot(const PageContext& page) {
    const PriceMultiple& price = *page.content.cost.estimate.multiple;
    const std::vector<MultipleBand> bands = usual_bands(page.content.cost.estimate);
    double most = price.multiple.high;
    for (const MultipleBand& band : bands) most = std::max(most, band.high);
    most *= kRoomAtTheEnd;
    const PlotNames names{page.id("multiple"), "Price multiple",
                          fmt::format("The price without sales tax is {:.2f} times the total, 95 % between {:.2f} and "
                                      "{:.2f}; below it the multiples that are usual.",
                                      price.multiple.value, price.multiple.low, price.multiple.high)};
    Plot plot(page.html, names, most, bands.size() + 1, kPlotAxis);
    plot.label(0, "This sample", "strong");
    plot.value(0, fmt::format("{}{:.2f}", price.floor_only ? "at most " : "", price.multiple.value), "strong");
    plot.whisker(0, price.multiple.low, price.multiple.high);
    plot.dot(0, price.multiple.value);
    double top = kPlotRow;
    for (const MultipleBand& band : bands) {
        plot.label(top, band.title, "soft");
        plot.value(top, fmt::format("{:g} to {:g}", band.low, band.high), "soft");
        plot.bar(top, band.low, band.high, "usual");
        top += kPlotRow;
    }
    plot.guide(kPlotRow, top, price.multiple.value);
    plot.axis(top);
    plot.end();
}

}  // namespace grainside::report
