// One rule for people. Thread-safe for distinct `out`.
#ifndef GRAINSIDE_REPORT_RULE_VIEW_H
#define GRAINSIDE_REPORT_RULE_VIEW_H

#include <string>

#include "grainside/report.h"
#include "grainside/rule_book.h"

namespace grainside::report {

// What the rule flags and why, its condition in sentences; grade, markets and days; the same rule in other markets;
// what to write instead; its sources with what they say and how that is known; the texts of its proof, flagged words
// marked. REQUIRES: `rule` is an element of book.rules().
void append_rule_explained(const RuleBook& book, const RuleInfo& rule, const ViewOptions& options, std::string& out);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_RULE_VIEW_H
