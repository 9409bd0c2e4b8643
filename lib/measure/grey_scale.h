// Grey scale ratings of a change in colour and of staining, worked out from CIELAB readings.
//
// Change in colour: ISO 105-A05:1996. The rating GS (clause 8), the mean hue and the weight of the hue (clause 7.2)
// were read as others print them; the rest of clause 7 (the definition of dE_F) and the table of half steps are from
// memory. The table stands on firmer ground than that: its limits are the midpoints between the nominal
// differences of ISO 105-A02:1993, which were read. Staining: ISO 105-A04; the difference and the bands were read, the
// two formulas of the rating are from memory. Ratings run from 1 (strong) to 5 (none). Differences are CIELAB units and
// never negative; functions return nothing for anything else. Pure functions, any number of threads.
#ifndef GRAINSIDE_MEASURE_GREY_SCALE_H
#define GRAINSIDE_MEASURE_GREY_SCALE_H

#include <cstdint>
#include <optional>
#include <string_view>

#include "measure/colour_difference.h"
#include "measure/measured.h"

namespace grainside::measure {

// The nine steps of the scale, worst first, so that a lower enumerator is a stronger change.
enum class HalfStep : std::uint8_t {
    grade_1,
    grade_1_2,
    grade_2,
    grade_2_3,
    grade_3,
    grade_3_4,
    grade_4,
    grade_4_5,
    grade_5,
};

// "1", "1-2" ... "5", as reports write them.
std::string_view half_step_text(HalfStep step);

// 1, 1.5 ... 5.
double half_step_value(HalfStep step);

// dE_F of ISO 105-A05: CIELAB difference with chroma and hue weighted down for strong colours and corrected around the
// blue hue of 280 degrees. Not the same in both orders. A grey has no hue: the other colour's hue stands for the mean
// (our decision; the pages read do not tell).
double grey_scale_difference(const Lab& reference, const Lab& specimen);

// GS of ISO 105-A05 clause 8: 5 - d/1.7 up to d = 3.4, then 5 - log2(d/0.85), not below 1.
std::optional<double> grey_scale_rating(double difference);

// The same with the uncertainty of the difference carried over to first order. At and beyond rating 1 the slope of the
// logarithm is kept although the rating stands still, so that u does not claim a certainty that nobody has.
std::optional<Measured> grey_scale_rating(const Measured& difference);

// The half step of a change in colour by the table of ISO 105-A05 on dE_F. This is the rule that Grainside reports:
// rounding GS to the nearest half step differs from it in thin bands (0.40 to 0.425, 4.04 to 4.10 and others).
std::optional<HalfStep> grey_scale_half_step(double difference);

// dE_GS of ISO 105-A04: dE - 0.4 sqrt(dE^2 - dL^2), from the unstained to the stained adjacent cloth.
double staining_difference(const Lab& unstained, const Lab& stained);

// Staining rating of ISO 105-A04: 5 - 0.23 d, and where that is 4 or less 6.1 - 1.45 ln d; kept within 1 and 5. The two
// formulas do not meet: the rating drops from 4.00 to 3.97 where they change over.
std::optional<double> staining_rating(double difference);

// With the uncertainty of the difference, as above.
std::optional<Measured> staining_rating(const Measured& difference);

// The half step of a staining rating by the bands of ISO 105-A04, which are printed to two decimals (4.25 to 4.74 is
// 4-5): the rating is rounded to two decimals first.
std::optional<HalfStep> staining_half_step(double rating);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_GREY_SCALE_H
