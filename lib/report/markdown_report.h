// A dossier's report as Markdown, to paste into an article or a letter to the seller. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_MARKDOWN_REPORT_H
#define GRAINSIDE_REPORT_MARKDOWN_REPORT_H

#include <span>
#include <string>

#include "report/report_content.h"

namespace grainside::report {

void append_markdown_report(std::string& out, std::span<const ReportContent* const> dossiers);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_MARKDOWN_REPORT_H
