// How far a share that was counted in a sample may lie from the share of all: Wilson's score limits, Newcombe's limits
// of a difference, and how many must be counted for limits of a wanted width.
//
// Sources: E. B. Wilson, Journal of the American Statistical Association 22 (1927) 209-212; R. G. Newcombe, Statistics
// in Medicine 17 (1998) 857-872 (one proportion) and 873-890 (differences, method 10). Shares lie in [0, 1],
// `confidence` in (0, 1) is that of both limits together. All of it is about samples drawn at random, each by itself.
// Nothing here throws. Thread-safe.
#ifndef GRAINSIDE_MEASURE_PROPORTION_H
#define GRAINSIDE_MEASURE_PROPORTION_H

#include <cstdint>

namespace grainside::measure {

// `count` of `of`.
// REQUIRES: count <= of.
struct Counted {
    std::uint64_t count = 0;
    std::uint64_t of = 0;
};

struct ShareLimits {
    double low = 0;
    double high = 1;
};

// Within [0, 1], and holding count / of: the lower one is exactly 0 where nothing was counted, the upper one exactly 1
// where everything was. 0 and 1 where `of` is 0.
ShareLimits wilson_limits(const Counted& counted, double confidence);

// Of the share of `one` less that of `other`, within [-1, 1]. -1 and 1 where one of them is of nothing.
ShareLimits difference_limits(const Counted& one, const Counted& other, double confidence);

// The smallest number of which the Wilson limits, where a share of `share` is counted, are no further apart than twice
// `half_width`. At most 2^53; 1 at least.
// REQUIRES: 0 <= share <= 1 and half_width > 0.
std::uint64_t number_for_half_width(double share, double half_width, double confidence);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_PROPORTION_H
