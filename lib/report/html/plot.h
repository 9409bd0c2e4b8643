// Rows of bars, whiskers and dots over one scale, as an inline SVG that needs no script. Labels and values stand above
// each row's mark, so that the plot can be read in print and without colour. Thread-safe for distinct writers.
#ifndef GRAINSIDE_REPORT_HTML_PLOT_H
#define GRAINSIDE_REPORT_HTML_PLOT_H

#include <cstddef>
#include <string>
#include <string_view>

#include "report/html/html_writer.h"

namespace grainside::report {

inline constexpr double kPlotRow = 36;   // height of a row
inline constexpr double kPlotAxis = 24;  // height of the axis below the rows

// What a reader hears who does not see the plot; `name` makes ids of it.
struct PlotNames {
    std::string name;
    std::string title;
    std::string text;
};

class Plot {
public:
    // From 0 to `most`, with `rows` rows and `below` under them.
    Plot(HtmlWriter& html, const PlotNames& names, double most, std::size_t rows, double below);
    void end() { html_.end(); }

    void label(double top, std::string_view text, std::string_view css);
    void value(double top, std::string_view text, std::string_view css);
    void bar(double top, double from, double to, std::string_view css);
    void whisker(double top, double low, double high);
    void dot(double top, double value);
    void guide(double from, double to, double value) { line(at(value), from, at(value), to, "guide"); }
    void axis(double top);

private:
    double at(double value) const;
    void line(double x1, double y1, double x2, double y2, std::string_view css);

    HtmlWriter& html_;
    double most_;
};

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_HTML_PLOT_H
