// Beliefs in records, with the digits that mean something.
#ifndef GRAINSIDE_REPORT_ROUNDED_H
#define GRAINSIDE_REPORT_ROUNDED_H

#include <cmath>

namespace grainside::report {

// To a hundred thousandth.
inline double rounded(double share) noexcept {
    constexpr double kSteps = 1e5;
    return std::round(share * kSteps) / kSteps;
}

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_ROUNDED_H
