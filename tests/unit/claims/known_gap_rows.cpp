#include "claim_rows.h"

namespace grainside::claims {
namespace {

constexpr Row kRows[] = {
    {"cuir_de_vachette", "Sac en cuir de vachette.", "species cowhide body 'cuir de vachette'"},
};

}  // namespace

std::span<const Row> known_gap_rows() {
    return kRows;
}

}  // namespace grainside::claims
