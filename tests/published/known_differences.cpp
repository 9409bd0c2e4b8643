#include "known_differences.h"

namespace grainside::published {

namespace {

constexpr KnownDifference kPatternExamples[] = {
    {"lining_with_50_more_recycled_fibre",
     "a statement after 'with' speaks of the lining before it; the part comes out as whole"},
};

}  // namespace

std::span<const KnownDifference> known_differences_of_pattern_examples() {
    return kPatternExamples;
}

std::span<const KnownDifference> known_differences_of_leather_words() {
    return {};
}

std::span<const KnownDifference> known_differences_of_worked_examples() {
    return {};
}

}  // namespace grainside::published
