#include "evidence/colour_change.h"

#include <cmath>

#include "measure/colour_difference.h"
#include "measure/grey_scale.h"
#include "measure/propagation.h"

namespace grainside::evidence {

namespace {

using measure::Lab;
using measure::Measured;

constexpr std::size_t kCoordinates = 6;
using Coordinates = std::array<double, kCoordinates>;

double at(const Coordinates& values, double (*difference)(const Lab&, const Lab&)) {
    return difference({values[0], values[1], values[2]}, {values[3], values[4], values[5]});
}

Measured with_uncertainty(const std::array<Measured, kCoordinates>& inputs,
                          double (*difference)(const Lab&, const Lab&)) {
    Coordinates values{};
    for (std::size_t i = 0; i < kCoordinates; ++i) values[i] = inputs[i].value;
    const double value = at(values, difference);
    std::array<double, kCoordinates> slopes{};
    for (std::size_t i = 0; i < kCoordinates; ++i) {
        if (inputs[i].u == 0) continue;
        Coordinates moved = values;
        moved[i] = values[i] + inputs[i].u;
        const double up = at(moved, difference) - value;
        moved[i] = values[i] - inputs[i].u;
        const double down = at(moved, difference) - value;
        slopes[i] = std::hypot(up, down) / std::sqrt(2.0) / inputs[i].u;
    }
    return measure::propagate(value, inputs, slopes);
}

}  // namespace

ColourChange colour_change(const MeasuredColour& before, const MeasuredColour& after) {
    const std::array<Measured, kCoordinates> inputs = {before[0], before[1], before[2], after[0], after[1], after[2]};
    return {.ciede2000 = with_uncertainty(inputs, measure::difference_ciede2000),
            .difference = with_uncertainty(inputs, measure::grey_scale_difference)};
}

}  // namespace grainside::evidence
