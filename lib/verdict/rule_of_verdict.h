// What gave a verdict its grade. Thread-safe.
#ifndef GRAINSIDE_VERDICT_RULE_OF_VERDICT_H
#define GRAINSIDE_VERDICT_RULE_OF_VERDICT_H

#include <string_view>

#include "grainside/judge.h"

namespace grainside::verdict {

// What stands before the grade in the id of a verdict that no rule and no limit decided.
inline constexpr std::string_view kByReadings = "readings/";

// Whether `limit` gives the grade of `verdict`, or leaves it open.
bool decides(const LimitResult& limit, const Verdict& verdict) noexcept;

// The rule on words, or the limit that decided; empty where the readings alone did, or their lack.
std::string_view deciding_rule(const RuleBook& book, const CheckResult& check, const Verdict& verdict) noexcept;

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_RULE_OF_VERDICT_H
