#include "claim_rows.h"

namespace grainside::claims {
namespace {

constexpr Row kRows[] = {
    {"unknown_fibre_alone", "100% Lumirelle fiber*",
     "composition other-fibres body quantity=100 percent '100% Lumirelle fiber'"},
};

}  // namespace

std::span<const Row> known_gap_rows() {
    return kRows;
}

}  // namespace grainside::claims
