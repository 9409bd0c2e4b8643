// The keys of a compiled condition, each asked alone.
#ifndef GRAINSIDE_TESTS_RULES_CONDITION_KEYS_H
#define GRAINSIDE_TESTS_RULES_CONDITION_KEYS_H

#include <string_view>
#include <vector>

#include "rules/condition.h"

namespace grainside::coverage {

struct Key {
    std::string_view name;
    rules::ClaimCondition alone;  // asks for this key and nothing else
};

// One for each key that differs from a condition that asks for nothing. `negated: no` is left out: it holds wherever a
// rule says nothing of denial.
std::vector<Key> keys_of(const rules::ClaimCondition& condition, std::size_t concept_count);

}  // namespace grainside::coverage

#endif  // GRAINSIDE_TESTS_RULES_CONDITION_KEYS_H
