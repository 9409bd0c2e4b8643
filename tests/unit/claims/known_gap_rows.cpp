#include "claim_rows.h"

namespace grainside::claims {
namespace {

constexpr Row kRows[] = {
    {"cuir_dagneau", "Sac en cuir d'agneau.", "species lamb-leather body 'cuir d'agneau'"},
    {"unknown_fibre_alone", "100% Lumirelle fiber*",
     "composition other-fibres body quantity=100 percent '100% Lumirelle fiber'"},
};

}  // namespace

std::span<const Row> known_gap_rows() {
    return kRows;
}

}  // namespace grainside::claims
