// How often, and how much, this process has asked for memory. Link allocations.cpp into a test to count.
//
// The operators stand in a file of their own because g++ 12 warns of a mismatched delete where it can inline one of
// them and not the other.
#ifndef GRAINSIDE_TESTS_SUPPORT_ALLOCATIONS_H
#define GRAINSIDE_TESTS_SUPPORT_ALLOCATIONS_H

#include <cstddef>

namespace grainside::support {

struct Allocations {
    std::size_t count = 0;
    std::size_t bytes = 0;
};

// Since the process began, over all threads.
Allocations allocations();

}  // namespace grainside::support

#endif  // GRAINSIDE_TESTS_SUPPORT_ALLOCATIONS_H
