// The verdicts of dossiers as a table in CSV, one row a statement. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_TABLE_REPORT_H
#define GRAINSIDE_REPORT_TABLE_REPORT_H

#include <span>
#include <string>

#include "report/report_content.h"

namespace grainside::report {

// RFC 4180 with a header line. A dossier without a statement has one row, with the columns of the statement empty.
void append_table_report(std::string& out, std::span<const ReportContent* const> dossiers);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_TABLE_REPORT_H
