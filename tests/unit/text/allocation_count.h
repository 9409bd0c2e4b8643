// How often this process has asked for memory. The counting operators stand in a file of their own because g++ 12 warns
// of a mismatched delete where it can inline one of them and not the other.
#ifndef GRAINSIDE_TESTS_UNIT_TEXT_ALLOCATION_COUNT_H
#define GRAINSIDE_TESTS_UNIT_TEXT_ALLOCATION_COUNT_H

#include <cstddef>

namespace grainside::text {

std::size_t allocation_count();

}  // namespace grainside::text

#endif  // GRAINSIDE_TESTS_UNIT_TEXT_ALLOCATION_COUNT_H
