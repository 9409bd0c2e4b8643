// The distributions that a measured value may have, and the probabilities that are read off them.
//
// Which one stands for which knowledge is laid down in JCGM 101:2008, 6.4: a value with a standard uncertainty is
// normal (6.4.7), a value known only to lie between two ends is rectangular (6.4.2), a mean of few readings is a scaled
// and shifted t (6.4.9). Nothing here throws; arguments outside the stated ranges give a quiet NaN. Thread-safe.
#ifndef GRAINSIDE_MEASURE_DISTRIBUTION_H
#define GRAINSIDE_MEASURE_DISTRIBUTION_H

#include <cstdint>
#include <string_view>

namespace grainside::measure {

enum class Distribution : std::uint8_t { normal, rectangular, student_t };
std::string_view name_of(Distribution distribution) noexcept;

// The probability of a value below (above) `z` for Student's t with `dof` degrees of freedom; the normal distribution
// where `dof` is infinite. Each tail is worked out by itself, so that a small probability keeps its digits. `z` may be
// infinite.
// REQUIRES: dof > 0.
double probability_below(double z, double dof);
double probability_above(double z, double dof);

// The t that -t to t holds with `probability`, JCGM 100:2008 table G.2. `dof` may be infinite and need not be whole.
// REQUIRES: 0 < probability < 1 and dof > 0.
double two_sided_quantile(double probability, double dof);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_DISTRIBUTION_H
