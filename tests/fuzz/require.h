// What a fuzz target asserts: a property that fails ends the process, which libFuzzer and replay_main.cpp tell with the
// input.
#ifndef GRAINSIDE_TESTS_FUZZ_REQUIRE_H
#define GRAINSIDE_TESTS_FUZZ_REQUIRE_H

#include <cstdlib>

namespace grainside::fuzz {

inline void require(bool holds) {
    if (!holds) std::abort();
}

}  // namespace grainside::fuzz

#endif  // GRAINSIDE_TESTS_FUZZ_REQUIRE_H
