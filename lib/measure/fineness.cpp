#include "measure/fineness.h"

#include <array>
#include <cmath>

#include "measure/propagation.h"
#include "measure/usable.h"

namespace grainside::measure {
namespace {

constexpr double kFineKarat = 24;
constexpr double kFineParts = 1000;

bool is_fineness(double parts_per_thousand) {
    return parts_per_thousand >= 0 && parts_per_thousand <= kFineParts;
}

}  // namespace

std::optional<double> parts_per_thousand_of_karat(double karat) {
    if (!(karat >= 0 && karat <= kFineKarat)) return std::nullopt;
    return karat * kFineParts / kFineKarat;
}

std::optional<double> karat_of_parts_per_thousand(double parts_per_thousand) {
    if (!is_fineness(parts_per_thousand)) return std::nullopt;
    return parts_per_thousand * kFineKarat / kFineParts;
}

std::optional<Measured> fine_gold_iso10713(const GoldLayer& layer) {
    const std::optional<Measured> by_fineness = fine_gold_us_guides(layer.thickness, layer.parts_per_thousand);
    if (!by_fineness || !is_usable(layer.alloy_density) || !(layer.alloy_density.value > 0)) return std::nullopt;
    const double relative_density = layer.alloy_density.value / kFineGoldDensity;
    const double fineness = layer.parts_per_thousand.value / kFineParts;
    const std::array inputs = {layer.thickness, layer.parts_per_thousand, layer.alloy_density};
    const std::array sensitivities = {fineness * relative_density,
                                      layer.thickness.value / kFineParts * relative_density,
                                      by_fineness->value / kFineGoldDensity};
    return propagate(by_fineness->value * relative_density, inputs, sensitivities);
}

std::optional<double> alloy_thickness_iso10713(double fine_gold, double parts_per_thousand, double alloy_density) {
    if (!std::isfinite(fine_gold) || !std::isfinite(alloy_density)) return std::nullopt;
    if (!(fine_gold >= 0) || !is_fineness(parts_per_thousand) || !(parts_per_thousand > 0) || !(alloy_density > 0)) {
        return std::nullopt;
    }
    return fine_gold * kFineGoldDensity / (parts_per_thousand / kFineParts * alloy_density);
}

std::optional<Measured> fine_gold_us_guides(const Measured& thickness, const Measured& parts_per_thousand) {
    if (!is_usable(thickness) || !is_usable(parts_per_thousand) || !(thickness.value >= 0) ||
        !is_fineness(parts_per_thousand.value)) {
        return std::nullopt;
    }
    const double fineness = parts_per_thousand.value / kFineParts;
    const std::array inputs = {thickness, parts_per_thousand};
    const std::array sensitivities = {fineness, thickness.value / kFineParts};
    return propagate(thickness.value * fineness, inputs, sensitivities);
}

}  // namespace grainside::measure
