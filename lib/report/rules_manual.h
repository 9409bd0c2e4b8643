// The rule reference as a manual page. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_RULES_MANUAL_H
#define GRAINSIDE_REPORT_RULES_MANUAL_H

#include <string>

#include "report/rule_reference.h"

namespace grainside::report {

void append_rules_manual(const RuleReference& reference, std::string& out);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_RULES_MANUAL_H
