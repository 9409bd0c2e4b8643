// The whole report as one JSON document (tools/schema/report.schema.json). Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_JSON_REPORT_H
#define GRAINSIDE_REPORT_JSON_REPORT_H

#include <span>
#include <string>

#include "report/report_content.h"

namespace grainside::report {

void append_json_report(std::string& out, std::span<const ReportContent* const> dossiers);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_JSON_REPORT_H
