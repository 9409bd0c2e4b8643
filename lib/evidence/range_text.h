// Ranges as alloys.yaml has them: "3.7-4.3", "6.6-6.7 g/cm3".
#ifndef GRAINSIDE_EVIDENCE_RANGE_TEXT_H
#define GRAINSIDE_EVIDENCE_RANGE_TEXT_H

#include <optional>
#include <string>
#include <string_view>

#include "measure/blurred_range.h"

namespace grainside::evidence {

struct RangeText {
    measure::Range range;  // as written, low <= high not checked
    std::string unit;      // what follows the numbers, may be empty
};

// Two plain decimals that are not negative with a hyphen or dash between them, then perhaps a unit. Nothing for
// anything else. Thread-safe.
std::optional<RangeText> parse_range(std::string_view text);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_RANGE_TEXT_H
