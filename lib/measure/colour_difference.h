// Differences between two colours of the CIELAB space (CIE 015, ISO/CIE 11664-4), without unit.
//
// L is 0 (black) to 100 (white); a and b run from green to red and from blue to yellow, seldom beyond +-128. The same
// light and observer must hold for both colours, usually D65 and 10 degrees. Every function takes any finite numbers
// and is pure: any number of threads may call it. Distances are the same in both orders.
#ifndef GRAINSIDE_MEASURE_COLOUR_DIFFERENCE_H
#define GRAINSIDE_MEASURE_COLOUR_DIFFERENCE_H

namespace grainside::measure {

struct Lab {
    double L = 0;  // NOLINT(readability-identifier-naming): the coordinate is a capital in every table
    double a = 0;
    double b = 0;
};

// Distance from the grey axis.
double chroma(const Lab& colour);

// Hue angle in degrees, 0 up to but not 360, counted from +a towards +b; 0 on the grey axis, which has no hue.
double hue(const Lab& colour);

// Middle of two hue angles in degrees along the shorter way round, 0 up to but not 360.
double mean_hue(double first, double second);

// CIELAB difference of 1976: the length of the straight line.
double difference_cielab(const Lab& first, const Lab& second);

// Hue difference of 1976, what is left of the CIELAB difference beside those of lightness and chroma. Its sign is that
// of the turn from `first` to `second`: positive towards larger hue angles, 0 where either is grey.
double hue_difference(const Lab& first, const Lab& second);

// CIEDE2000 with kL = kC = kH = 1 (ISO/CIE 11664-6; Sharma, Wu and Dalal, Color Research and Application 30 (2005)
// 21-30, whose rules for the mean hue are taken).
double difference_ciede2000(const Lab& first, const Lab& second);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_COLOUR_DIFFERENCE_H
