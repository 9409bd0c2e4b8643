// Which label a claim or finding answers to: the rule at the end of corpus/README.md.
#ifndef GRAINSIDE_TESTS_SCORING_MATCHING_H
#define GRAINSIDE_TESTS_SCORING_MATCHING_H

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace grainside::scoring {

// Half-open byte span in the text of a listing's field, which is named by its index.
struct Span {
    std::uint32_t field = 0;
    std::uint32_t start = 0;
    std::uint32_t end = 0;

    bool operator==(const Span&) const = default;
};

// How many bytes both hold; 0 for spans of different fields.
std::uint32_t overlap(const Span& a, const Span& b) noexcept;

// Only candidates of equal `key` match: kind and negation of a claim, grade of a finding.
struct Candidate {
    Span span;
    std::uint32_t key = 0;
};

struct Pair {
    std::size_t label = 0;
    std::size_t found = 0;

    bool operator==(const Pair&) const = default;
};

struct Matching {
    std::vector<Pair> pairs;           // sorted by label
    std::vector<std::size_t> missed;   // labels without a partner, ascending
    std::vector<std::size_t> surplus;  // found without a partner, ascending
};

// One to one, the largest overlap first. Of equal overlaps the pair with the fewest bytes outside of it goes first,
// then the earlier label, then the earlier found one, so that the result does not depend on anything else. Cost:
// product of both sizes. Thread-safe.
Matching match(std::span<const Candidate> labels, std::span<const Candidate> found);

}  // namespace grainside::scoring

#endif  // GRAINSIDE_TESTS_SCORING_MATCHING_H
