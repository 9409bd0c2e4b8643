#include "verdict/one_cause.h"

#include <algorithm>
#include <tuple>

namespace grainside::verdict {

void keep_one_per_cause(std::span<const Claim> claims, std::vector<Finding>& findings) {
    const auto field = [&](const Finding& finding) { return claims[finding.claim].field; };
    std::sort(findings.begin(), findings.end(), [&](const Finding& a, const Finding& b) {
        return std::tuple(field(a), a.start, a.grade, b.end, a.rule, a.claim) <
               std::tuple(field(b), b.start, b.grade, a.end, b.rule, b.claim);
    });
    // Sweep: `kept` grows at its end; a newcomer meets only those that still reach its start.
    const auto stronger = [](const Finding& a, const Finding& b) {
        return std::tuple(a.grade, b.end - b.start, a.rule) < std::tuple(b.grade, a.end - a.start, b.rule);
    };
    std::size_t kept = 0;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        Finding finding = findings[i];
        bool beaten = false;
        while (kept > 0) {
            const Finding& last = findings[kept - 1];
            if (field(last) != field(finding) || last.end <= finding.start) break;
            if (!stronger(finding, last)) {
                beaten = true;
                break;
            }
            --kept;
        }
        const bool again = kept > 0 && findings[kept - 1].rule == finding.rule &&
                           claims[findings[kept - 1].claim].phrase == claims[finding.claim].phrase;
        if (!beaten && !again) findings[kept++] = finding;
    }
    findings.resize(kept);
    const auto adds_nothing = [&](const Finding& finding) {
        if (claims[finding.claim].kind != Kind::quality || finding.grade != Grade::vague) return false;
        return std::any_of(findings.begin(), findings.end(), [&](const Finding& other) {
            return other.grade < finding.grade && claims[other.claim].phrase == claims[finding.claim].phrase;
        });
    };
    findings.erase(std::remove_if(findings.begin(), findings.end(), adds_nothing), findings.end());
}

}  // namespace grainside::verdict
