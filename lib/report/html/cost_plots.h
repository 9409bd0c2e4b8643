// The plots of a sample's cost, as SVG 1.1 in the page: each has a title and a description, and a table beside it says
// the same. Drawn for the width of a phone, so that their letters stay readable there. Thread-safe.
#ifndef GRAINSIDE_REPORT_HTML_COST_PLOTS_H
#define GRAINSIDE_REPORT_HTML_COST_PLOTS_H

#include "report/html/page_parts.h"

namespace grainside::report {

// Each line of the build-up behind what stands before it, and the sums; with where 95 % lies.
void write_build_up_plot(const PageContext& page);
// The multiple among those that are usual. REQUIRES: the estimate has one.
void write_multiple_plot(const PageContext& page);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_HTML_COST_PLOTS_H
