// The keys of a compiled condition, each asked alone.
#ifndef GRAINSIDE_VERDICT_EXAMINATION_CONDITION_KEYS_H
#define GRAINSIDE_VERDICT_EXAMINATION_CONDITION_KEYS_H

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "rules/condition.h"

namespace grainside::verdict {

struct Key {
    std::string_view name;
    rules::ClaimCondition alone;  // asks for this key and nothing else
};

// One for each key that differs from a condition that asks for nothing. `negated: no` is left out: it holds wherever a
// rule says nothing of denial.
std::vector<Key> keys_of(const rules::ClaimCondition& condition, std::size_t concept_count);

// Whether `condition` asks for nothing in `says`.
bool says_anything(const rules::ClaimCondition& condition, std::size_t concept_count);

// What a clause asks of a claim, the graded one or another.
inline const rules::ClaimCondition& asked_claim(const rules::ClaimCondition& condition) {
    return condition;
}
inline const rules::ClaimCondition& asked_claim(const rules::BesideCondition& condition) {
    return condition.claim;
}

// "unless[2]" of several, "unless" of one.
std::string clause_name(std::string_view key, std::size_t index, std::size_t count);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_EXAMINATION_CONDITION_KEYS_H
