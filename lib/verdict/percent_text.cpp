#include "verdict/percent_text.h"

#include <fmt/format.h>

namespace grainside::verdict {

std::string percent_text(double share) {
    if (share > 0.999) return "> 99.9 %";
    if (share < 0.001) return "< 0.1 %";
    // Near the ends, where beliefs decide, a whole number would say too little.
    const int digits = share > 0.94 || share < 0.06 ? 1 : 0;
    return fmt::format("{:.{}f} %", 100 * share, digits);
}

}  // namespace grainside::verdict
