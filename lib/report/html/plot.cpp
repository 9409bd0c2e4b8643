#include "report/html/plot.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace grainside::report {
namespace {

constexpr double kWidth = 360;
constexpr double kTextAt = 13;  // base line of a row's text, from its top
constexpr double kBarAt = 19;
constexpr double kBarHeight = 9;
constexpr double kWhisker = 4;  // half the height of its ends
constexpr std::size_t kMostLabelBytes = 46;

std::string number(double value) {
    return fmt::format("{:.2f}", value);
}

std::string label_text(std::string_view text) {
    if (text.size() <= kMostLabelBytes) return std::string(text);
    std::size_t end = kMostLabelBytes;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80) --end;
    return std::string(text.substr(0, end)) + "...";
}

}  // namespace

Plot::Plot(HtmlWriter& html, const PlotNames& names, double most, std::size_t rows, double below)
    : html_(html), most_(most > 0 ? most : 1) {
    const std::string title = names.name + "-title";
    const std::string text = names.name + "-text";
    html_.begin("svg", {{"class", "plot"},
                        {"viewBox", fmt::format("0 0 {} {}", kWidth, kPlotRow * static_cast<double>(rows) + below)},
                        {"role", "img"},
                        {"aria-labelledby", title + ' ' + text}});
    html_.element("title", {{"id", title}}, names.title);
    html_.element("desc", {{"id", text}}, names.text);
}

void Plot::label(double top, std::string_view text, std::string_view css) {
    html_.element("text", {{"x", "0"}, {"y", number(top + kTextAt)}, {"class", css}}, label_text(text));
}

void Plot::value(double top, std::string_view text, std::string_view css) {
    html_.element("text", {{"x", number(kWidth)}, {"y", number(top + kTextAt)}, {"text-anchor", "end"}, {"class", css}},
                  text);
}

void Plot::bar(double top, double from, double to, std::string_view css) {
    html_.shape("rect", {{"class", css},
                         {"x", number(at(from))},
                         {"y", number(top + kBarAt)},
                         {"width", number(std::max(at(to) - at(from), 0.5))},
                         {"height", number(kBarHeight)}});
}

void Plot::whisker(double top, double low, double high) {
    const double middle = top + kBarAt + kBarHeight / 2;
    line(at(low), middle, at(high), middle, "");
    for (const double end : {low, high}) line(at(end), middle - kWhisker, at(end), middle + kWhisker, "");
}

void Plot::dot(double top, double value) {
    html_.shape("circle", {{"cx", number(at(value))}, {"cy", number(top + kBarAt + kBarHeight / 2)}, {"r", "3.5"}});
}

void Plot::axis(double top) {
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

double Plot::at(double value) const {
    return std::clamp(value / most_, 0.0, 1.0) * kWidth;
}

void Plot::line(double x1, double y1, double x2, double y2, std::string_view css) {
    const std::string a = number(x1), b = number(y1), c = number(x2), d = number(y2);
    if (css.empty()) {
        html_.shape("line", {{"x1", a}, {"y1", b}, {"x2", c}, {"y2", d}});
    } else {
        html_.shape("line", {{"x1", a}, {"y1", b}, {"x2", c}, {"y2", d}, {"class", css}});
    }
}

}  // namespace grainside::report
