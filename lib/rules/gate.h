// What a rule asks of a claim at the first glance.
#ifndef GRAINSIDE_RULES_GATE_H
#define GRAINSIDE_RULES_GATE_H

#include <algorithm>
#include <cstdint>
#include <span>

#include "rules/condition.h"

namespace grainside::rules {

// Most rules that know a claim's concept fail on its kind, its part or a mark. A gate holds these alone, so that the
// gates of all rules lie in the first-level cache and the conditions themselves are seldom looked at. Where it does not
// admit a claim, none of the conditions holds.
class Gate {
public:
    // Of conditions of which one suffices; of none: admits nothing.
    explicit Gate(std::span<const ClaimCondition> conditions) {
        if (conditions.empty()) return;
        marked_all_ = conditions.front().marked_all;
        unmarked_ = conditions.front().unmarked;
        any_mark_ = std::any_of(conditions.begin(), conditions.end(),
                                [](const ClaimCondition& condition) { return condition.marked == 0; });
        for (const ClaimCondition& condition : conditions) {
            kinds_ |= condition.kinds;
            parts_ |= condition.main_part ? ~std::uint32_t{0} : condition.parts;
            marked_ |= condition.marked;
            marked_all_ &= condition.marked_all;
            unmarked_ &= condition.unmarked;
            stated_ = stated_ || !condition.negated.value_or(false);
            denied_ = denied_ || condition.negated.value_or(true);
        }
    }

    bool admits(const Claim& claim) const noexcept {
        return (kinds_ >> static_cast<unsigned>(claim.kind) & 1U) != 0 &&
               (parts_ >> static_cast<unsigned>(claim.part) & 1U) != 0 && (any_mark_ || (claim.marks & marked_) != 0) &&
               (claim.marks & marked_all_) == marked_all_ && (claim.marks & unmarked_) == 0 &&
               (claim.negated ? denied_ : stated_);
    }

private:
    std::uint32_t kinds_ = 0;
    std::uint32_t parts_ = 0;
    std::uint32_t marked_ = 0;
    std::uint32_t marked_all_ = 0;
    std::uint32_t unmarked_ = 0;
    bool any_mark_ = false;
    bool stated_ = false;
    bool denied_ = false;
};

}  // namespace grainside::rules

#endif  // GRAINSIDE_RULES_GATE_H
