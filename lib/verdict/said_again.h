// A name that disagrees with the listing, wherever it stands.
#ifndef GRAINSIDE_VERDICT_SAID_AGAIN_H
#define GRAINSIDE_VERDICT_SAID_AGAIN_H

#include <span>
#include <vector>

#include "grainside/claim.h"
#include "grainside/finding.h"

namespace grainside::verdict {

// A material's name that is flagged because of another statement is flagged wherever another sentence gives the same
// thing that name, but for the sentence that it disagrees with: the title above 'Upper: genuine leather, 100% PU' must
// be mended too. `findings` are in the order of their claims, as RuleMatcher gives them; what is added stands behind
// them. Linear in the claims: of more than 64 flagged names the first count.
void flag_said_again(std::span<const Claim> claims, std::vector<Finding>& findings);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_SAID_AGAIN_H
