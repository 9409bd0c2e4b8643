// How often this program has allocated.
#ifndef GRAINSIDE_TESTS_UNIT_LISTING_COUNTING_NEW_H
#define GRAINSIDE_TESTS_UNIT_LISTING_COUNTING_NEW_H

#include <cstddef>

namespace grainside::testing_listing {

// Calls of operator new, aligned ones too, since the program began.
std::size_t allocations();

}  // namespace grainside::testing_listing

#endif  // GRAINSIDE_TESTS_UNIT_LISTING_COUNTING_NEW_H
