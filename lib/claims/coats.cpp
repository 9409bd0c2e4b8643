#include "claims/coats.h"

#include <array>

namespace grainside::claims {

void set_coats_against_totals(const vocabulary::Vocabulary& vocabulary, std::span<Claim> claims) {
    std::array<double, kPartCount> totals{};  // millimetres, the first that is stated; 0 = none
    for (const Claim& claim : claims) {
        double& total = totals[static_cast<std::size_t>(claim.part)];
        if (claim.says != vocabulary.known.thickness || total != 0) continue;
        if (const auto stated = in_millimetres(claim.quantity)) total = stated->low;
    }
    for (Claim& claim : claims) {
        const double total = totals[static_cast<std::size_t>(claim.part)];
        const auto coat = in_millimetres(claim.quantity);
        if (claim.says == vocabulary.known.coating_thickness && total > 0 && coat)
            claim.of_total = 100 * coat->low / total;
    }
}

}  // namespace grainside::claims
