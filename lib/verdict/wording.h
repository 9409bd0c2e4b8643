// The wording that a rule offers for a finding.
#ifndef GRAINSIDE_VERDICT_WORDING_H
#define GRAINSIDE_VERDICT_WORDING_H

#include <string>
#include <string_view>

#include "grainside/checker.h"
#include "grainside/rule_book.h"

namespace grainside::verdict {

// The rule's template filled in; "" where it has none or a value is missing. `bare` is the value of {bare}. Whether it
// passes a check is not asked.
std::string wording_of(const RuleBook& book, const Listing& listing, const CheckResult& result, const Finding& finding,
                       std::string_view bare);

bool asks_for_bare(const RuleBook& book, const Finding& finding);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_WORDING_H
