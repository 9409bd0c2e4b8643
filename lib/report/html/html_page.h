// A whole page of one dossier or of several. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_HTML_HTML_PAGE_H
#define GRAINSIDE_REPORT_HTML_HTML_PAGE_H

#include <span>
#include <string>
#include <vector>

#include "report/report_content.h"

namespace grainside::report {

// HTML Standard, self-contained: styles inside, no script, nothing fetched. Several dossiers come behind a table of all
// of them.
void append_html_page(std::string& out, std::span<const ReportContent* const> dossiers);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_HTML_HTML_PAGE_H
