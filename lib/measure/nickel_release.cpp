#include "measure/nickel_release.h"

#include <cmath>

namespace grainside::measure {
namespace {

bool is_release(double value) {
    return std::isfinite(value) && value >= 0;
}

}  // namespace

std::optional<NickelBounds> nickel_bounds(double limit, double factor) {
    if (!is_release(limit) || !(limit > 0) || !std::isfinite(factor) || !(factor >= 1)) return std::nullopt;
    return NickelBounds{.conforms_to = limit / factor, .fails_from = limit * factor};
}

std::optional<NickelZone> nickel_zone_2011(double release, const NickelBounds& bounds) {
    if (!is_release(release) || !is_release(bounds.conforms_to) || !is_release(bounds.fails_from) ||
        bounds.conforms_to >= bounds.fails_from) {
        return std::nullopt;
    }
    if (release <= bounds.conforms_to) return NickelZone::conforms;
    return release < bounds.fails_from ? NickelZone::undecided : NickelZone::does_not_conform;
}

std::optional<NickelZone> nickel_zone_2015(double release, double fails_from) {
    if (!is_release(release) || !is_release(fails_from)) return std::nullopt;
    return release < fails_from ? NickelZone::conforms : NickelZone::does_not_conform;
}

}  // namespace grainside::measure
