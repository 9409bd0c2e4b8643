#include "measure/coat_share.h"

#include <array>

#include "measure/propagation.h"
#include "measure/usable.h"

namespace grainside::measure {

std::optional<Measured> coat_share(const Measured& coat, const Measured& total, double correlation) {
    if (!is_usable(coat) || !is_usable(total) || !(correlation >= -1 && correlation <= 1)) return std::nullopt;
    if (!(coat.value >= 0) || !(total.value > 0) || coat.value > total.value) return std::nullopt;
    const double share = 100 * coat.value / total.value;
    const std::array inputs = {coat, total};
    const std::array sensitivities = {100 / total.value, -share / total.value};
    if (correlation == 0) return propagate(share, inputs, sensitivities);
    const std::array correlations = {1.0, correlation, correlation, 1.0};
    return propagate(share, inputs, sensitivities, correlations);
}

std::optional<Measured> base_share(const Measured& coat, const Measured& total, double correlation) {
    std::optional<Measured> share = coat_share(coat, total, correlation);
    if (share) share->value = 100 - share->value;
    return share;
}

}  // namespace grainside::measure
