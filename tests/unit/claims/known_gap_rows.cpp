#include "claim_rows.h"

namespace grainside::claims {
namespace {

constexpr Row kRows[] = {
    {"the_part_before_is_not", "The strap is not leather.", "material leather strap denied 'leather'"},
    {"colour_after_or", "Bag in black or bronze.", ""},
};

}  // namespace

std::span<const Row> known_gap_rows() { return kRows; }

}  // namespace grainside::claims
