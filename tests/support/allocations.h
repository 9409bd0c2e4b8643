// How often, and how much, this process has asked for memory, and what it does when there is none. Link allocations.cpp
// into a test for it: it replaces operator new in all its forms.
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

// While it lives, this thread is given `left` more pieces of memory, and then nothing. At most one in a thread.
class NoMemoryAfter {
public:
    explicit NoMemoryAfter(std::size_t left);
    ~NoMemoryAfter();
    NoMemoryAfter(const NoMemoryAfter&) = delete;
    NoMemoryAfter& operator=(const NoMemoryAfter&) = delete;
};

}  // namespace grainside::support

#endif  // GRAINSIDE_TESTS_SUPPORT_ALLOCATIONS_H
