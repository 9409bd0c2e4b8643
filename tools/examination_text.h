// What an examination found, for people and as records (tools/schema/remark, examination_end, coverage, coverage_end).
// `folder` is that of --rules, empty for the built-in book. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_TOOLS_EXAMINATION_TEXT_H
#define GRAINSIDE_TOOLS_EXAMINATION_TEXT_H

#include <string>

#include "verdict/examination/examiner.h"

namespace grainside::tools {

void append_remarks(const ExaminationReport& report, const std::string& folder, std::string& out);
void append_remark_records(const ExaminationReport& report, const std::string& folder, std::string& out);

// Rule by rule, a clause a line; then the gaps again by themselves, and the counts.
void append_coverage(const CoverageReport& report, const std::string& folder, std::string& out);
void append_coverage_records(const CoverageReport& report, const std::string& folder, std::string& out);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_EXAMINATION_TEXT_H
