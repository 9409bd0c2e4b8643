// The sources of a book, for people and as records. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_SOURCE_VIEW_H
#define GRAINSIDE_REPORT_SOURCE_VIEW_H

#include <string>

#include "grainside/report.h"
#include "grainside/rule_book.h"
#include "report/source_uses.h"

namespace grainside::report {

// Cite, what it says, how that is known, and how many entries cite it.
void append_source_summary(const SourceInfo& source, const SourceUses& uses, const ViewOptions& options,
                           std::string& out);
// The same with every rule, limit and method that cites it.
void append_source_page(const SourceInfo& source, const SourceUses& uses, const ViewOptions& options, std::string& out);
// {"source","cite","says","how","rules":[ids],"limits":[ids],"methods":[ids],"alloys":[ids]} on one line.
void append_source_record(const SourceInfo& source, const SourceUses& uses, std::string& out);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_SOURCE_VIEW_H
