// What stands around the content of every page: head, styles, the link that leads past everything. Thread-safe for
// distinct writers.
#ifndef GRAINSIDE_REPORT_HTML_PAGE_FRAME_H
#define GRAINSIDE_REPORT_HTML_PAGE_FRAME_H

#include <string_view>

#include "report/html/html_writer.h"

namespace grainside::report {

// Begins an HTML page, self-contained: styles inside, no script, nothing fetched. What comes next is in its body; the
// first link goes to the element `content` and is called `skip`.
void begin_page(HtmlWriter& html, std::string_view title, std::string_view skip);
void end_page(HtmlWriter& html);

// Each grade with its meaning, for a footer.
void write_grade_meanings(HtmlWriter& html);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_HTML_PAGE_FRAME_H
