#include "verdict/rule_of_verdict.h"

#include <string>

#include "grainside/concessions.h"

namespace grainside::verdict {

bool decides(const LimitResult& limit, const Verdict& verdict) noexcept {
    switch (verdict.grade) {
        case Grade::contradicted:
            return limit.says == LimitVerdict::contradicts;
        case Grade::consistent:
            return limit.says == LimitVerdict::supports;
        case Grade::inconclusive:
            return limit.says == LimitVerdict::undecided;
        default:
            return false;
    }
}

std::string_view deciding_rule(const RuleBook& book, const CheckResult& check, const Verdict& verdict) noexcept {
    if (verdict.basis != Basis::evidence && verdict.finding != kNoClaim) {
        return book.rules()[check.findings[verdict.finding].rule].id;
    }
    if (verdict.grade == Grade::inconclusive) return {};
    for (const LimitResult& limit : verdict.limits) {
        if (decides(limit, verdict)) return limit.limit;
    }
    return {};
}

}  // namespace grainside::verdict

namespace grainside {
inline namespace v0 {

std::string rule_of(const RuleBook& book, const CheckResult& check, const Verdict& verdict) {
    const std::string_view rule = verdict::deciding_rule(book, check, verdict);
    if (!rule.empty()) return std::string(rule);
    return std::string(verdict::kByReadings) += name_of(verdict.grade);
}

}  // namespace v0
}  // namespace grainside
