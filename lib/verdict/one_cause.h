// One finding per cause.
#ifndef GRAINSIDE_VERDICT_ONE_CAUSE_H
#define GRAINSIDE_VERDICT_ONE_CAUSE_H

#include <span>
#include <vector>

#include "grainside/claim.h"
#include "grainside/finding.h"
#include "grainside/listing.h"

namespace grainside::verdict {

// Of findings whose words overlap in one field, keeps the worst grade; of equal grades the one on more words, then the
// rule that stands first in the book. Of one rule's findings on one part in one phrase keeps the first. A quality word
// beside a worse finding on the same part of its phrase adds nothing. Leaves `findings` sorted by field, start, grade,
// rule. `fields` are those of the listing; what stands between two findings' words is read in them.
void keep_one_per_cause(std::span<const Field> fields, std::span<const Claim> claims, std::vector<Finding>& findings);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_ONE_CAUSE_H
