// The rule reference as a page. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_HTML_RULES_PAGE_H
#define GRAINSIDE_REPORT_HTML_RULES_PAGE_H

#include <string>

#include "report/rule_reference.h"

namespace grainside::report {

void append_rules_page(const RuleReference& reference, std::string& out);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_HTML_RULES_PAGE_H
