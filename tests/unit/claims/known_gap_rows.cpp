#include "claim_rows.h"

namespace grainside::claims {
namespace {

constexpr Row kRows[] = {
    {"cuir_dagneau", "Sac en cuir d'agneau.", "species lamb-leather body 'cuir d'agneau'"},
    // The animal's name is left as a claim of its own, of a hide that is not there (a rule flags it).
    {"species_before_imitation", "Wallet in cowhide faux leather.",
     "material imitation-leather body called=cowhide 'cowhide faux leather'"},
    {"unknown_fibre_alone", "100% Lumirelle fiber*",
     "composition other-fibres body quantity=100 percent '100% Lumirelle fiber'"},
};

}  // namespace

std::span<const Row> known_gap_rows() {
    return kRows;
}

}  // namespace grainside::claims
