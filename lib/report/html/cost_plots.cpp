#include "report/html/cost_plots.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "report/content_text.h"
#include "report/cost_facts.h"

namespace grainside::report {
namespace {

constexpr double kWidth = 360;
constexpr double kRow = 36;
constexpr double kTextAt = 13;  // base line of a row's text, from its top
constexpr double kBarAt = 19;
constexpr double kBarHeight = 9;
constexpr double kWhisker = 4;  // half the height of its ends
constexpr double kAxis = 24;    // height of the axis below the rows
constexpr double kRoomAtTheEnd = 1.03;
constexpr std::size_t kMostLabelBytes = 46;

std::string number(double value) {
    return fmt::format("{:.2f}", value);
}

// Rows of bars over one scale from 0 to `most`.
class Plot {
public:
    Plot(const PageContext& page, std::string_view name, double most, std::size_t rows, double below)
        : html_(page.html), most_(most > 0 ? most : 1) {
        html_.begin("svg", {{"class", "plot"},
                            {"viewBox", fmt::format("0 0 {} {}", kWidth, kRow * static_cast<double>(rows) + below)},
                            {"role", "img"},
                            {"aria-labelledby",
                             page.id(std::string(name) + "-title") + ' ' + page.id(std::string(name) + "-text")}});
    }
    void end() { html_.end(); }

    void label(double top, std::string_view text, std::string_view css) {
        html_.element("text", {{"x", "0"}, {"y", number(top + kTextAt)}, {"class", css}}, label_text(text));
    }
    void value(double top, std::string_view text, std::string_view css) {
        html_.element("text",
                      {{"x", number(kWidth)}, {"y", number(top + kTextAt)}, {"text-anchor", "end"}, {"class", css}},
                      text);
    }
    void bar(double top, double from, double to, std::string_view css) {
        html_.shape("rect", {{"class", css},
                             {"x", number(at(from))},
                             {"y", number(top + kBarAt)},
                             {"width", number(std::max(at(to) - at(from), 0.5))},
                             {"height", number(kBarHeight)}});
    }
    void whisker(double top, double low, double high) {
        const double middle = top + kBarAt + kBarHeight / 2;
        line(at(low), middle, at(high), middle, "");
        for (const double end : {low, high}) line(at(end), middle - kWhisker, at(end), middle + kWhisker, "");
    }
    void dot(double top, double value) {
        html_.shape("circle", {{"cx", number(at(value))}, {"cy", number(top + kBarAt + kBarHeight / 2)}, {"r", "3.5"}});
    }
    void guide(double from, double to, double value) { line(at(value), from, at(value), to, "guide"); }
    void axis(double top) {
        line(0, top, kWidth, top, "axis");
        // At most seven marks, at whole numbers of 1, 2 or 5 times a power of ten.
        const double rough = most_ / 6;
        const double power = std::pow(10, std::floor(std::log10(rough)));
        double step = 10 * power;
        for (const double times : {5.0, 2.0, 1.0}) {
            if (times * power >= rough) step = times * power;
        }
        for (double mark = 0; mark <= most_; mark += step) {
            line(at(mark), top, at(mark), top + 4, "axis");
            const bool first = mark == 0;
            const bool last = at(mark) > kWidth - 12;
            html_.element("text",
                          {{"x", number(at(mark))},
                           {"y", number(top + 17)},
                           {"text-anchor", first ? "start" : (last ? "end" : "middle")},
                           {"class", "soft"}},
                          fmt::format("{:g}", mark));
        }
    }

private:
    double at(double value) const { return std::clamp(value / most_, 0.0, 1.0) * kWidth; }
    void line(double x1, double y1, double x2, double y2, std::string_view css) {
        const std::string a = number(x1), b = number(y1), c = number(x2), d = number(y2);
        if (css.empty()) {
            html_.shape("line", {{"x1", a}, {"y1", b}, {"x2", c}, {"y2", d}});
        } else {
            html_.shape("line", {{"x1", a}, {"y1", b}, {"x2", c}, {"y2", d}, {"class", css}});
        }
    }
    static std::string label_text(std::string_view text) {
        if (text.size() <= kMostLabelBytes) return std::string(text);
        std::size_t end = kMostLabelBytes;
        while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80) --end;
        return std::string(text.substr(0, end)) + "...";
    }

    HtmlWriter& html_;
    double most_;
};

void write_names(const PageContext& page, std::string_view name, std::string_view title, std::string_view text) {
    page.html.element("title", {{"id", page.id(std::string(name) + "-title")}}, title);
    page.html.element("desc", {{"id", page.id(std::string(name) + "-text")}}, text);
}

}  // namespace

void write_build_up_plot(const PageContext& page) {
    const ReportCost& cost = page.content.cost;
    const std::vector<CostStep> steps = steps_of(cost.estimate);
    double most = 0;
    for (const CostStep& step : steps) {
        most = std::max({most, step.begins_at + step.amount.high, step.begins_at + step.amount.value});
    }
    most *= kRoomAtTheEnd;
    Plot plot(page, "build-up", most, steps.size(), 0);
    write_names(page, "build-up", "Cost build-up",
                fmt::format("{} lines, one behind the other, to a total of {}.", cost.estimate.lines.size(),
                            spread_text(cost.style, cost.estimate.total)));
    double top = 0;
    for (const CostStep& step : steps) {
        const bool is_sum = step.line == nullptr;
        plot.label(top, is_sum ? capitalised(step.text) : step.text, is_sum ? "strong" : "plain");
        plot.value(top, money_text(cost.style, step.amount.value), is_sum ? "strong" : "plain");
        plot.bar(top, step.begins_at, step.begins_at + step.amount.value, is_sum ? "total" : "bar");
        if (step.amount.u > 0) plot.whisker(top, step.begins_at + step.amount.low, step.begins_at + step.amount.high);
        top += kRow;
    }
    plot.end();
}

void write_multiple_plot(const PageContext& page) {
    const PriceMultiple& price = *page.content.cost.estimate.multiple;
    const std::vector<MultipleBand> bands = usual_bands(page.content.cost.estimate);
    double most = price.multiple.high;
    for (const MultipleBand& band : bands) most = std::max(most, band.high);
    most *= kRoomAtTheEnd;
    Plot plot(page, "multiple", most, bands.size() + 1, kAxis);
    write_names(page, "multiple", "Price multiple",
                fmt::format("The price without sales tax is {:.2f} times the total, 95 % between {:.2f} and {:.2f}; "
                            "below it the multiples that are usual.",
                            price.multiple.value, price.multiple.low, price.multiple.high));
    plot.label(0, "This sample", "strong");
    plot.value(0, fmt::format("{}{:.2f}", price.floor_only ? "at most " : "", price.multiple.value), "strong");
    plot.whisker(0, price.multiple.low, price.multiple.high);
    plot.dot(0, price.multiple.value);
    double top = kRow;
    for (const MultipleBand& band : bands) {
        plot.label(top, band.title, "soft");
        plot.value(top, fmt::format("{:g} to {:g}", band.low, band.high), "soft");
        plot.bar(top, band.low, band.high, "usual");
        top += kRow;
    }
    plot.guide(kRow, top, price.multiple.value);
    plot.axis(top);
    plot.end();
}

}  // namespace grainside::report
