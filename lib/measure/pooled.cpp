#include "measure/pooled.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace grainside::measure {

Measured pooled(std::span<const Measured> readings) {
    std::vector<Measured> counted(readings.begin(), readings.end());
    const bool exact = std::any_of(counted.begin(), counted.end(), [](const Measured& one) { return one.u == 0; });
    if (exact) std::erase_if(counted, [](const Measured& one) { return one.u > 0; });
    if (counted.size() == 1) return counted.front();
    // Sums in order of size, so that the order of the readings does not show in the last digit.
    std::sort(counted.begin(), counted.end(),
              [](const Measured& a, const Measured& b) { return a.value != b.value ? a.value < b.value : a.u < b.u; });
    double weights = 0;
    double sum = 0;
    for (const Measured& one : counted) {
        const double weight = exact ? 1 : 1 / (one.u * one.u);
        weights += weight;
        sum += weight * one.value;
    }
    Measured result;
    result.value = sum / weights;
    double squares = 0;
    double least_dof = result.dof;
    for (const Measured& one : counted) {
        const double off = one.value - result.value;
        squares += exact ? off * off : off * off / (one.u * one.u);
        least_dof = std::min(least_dof, one.dof);
    }
    const auto rest = static_cast<double>(counted.size() - 1);
    if (exact) {
        result.u = std::sqrt(squares / rest / static_cast<double>(counted.size()));
        if (result.u > 0) result.dof = rest;
        return result;
    }
    result.u = std::max(1.0, std::sqrt(squares / rest)) / std::sqrt(weights);
    result.dof = least_dof;
    return result;
}

}  // namespace grainside::measure
