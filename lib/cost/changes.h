// Values put in place of others, to see what would follow.
#ifndef GRAINSIDE_COST_CHANGES_H
#define GRAINSIDE_COST_CHANGES_H

#include <optional>
#include <string>
#include <vector>

#include "evidence/cost_data.h"
#include "grainside/cost.h"
#include "grainside/result.h"

namespace grainside::cost {

// Puts each change into `costs` and `paid`. An item is a line, or a group that has none yet; `exchange` with a currency
// as key; `costs` with `sales_tax`; `sample` with `price`. Of cutting yield, waste and allowance a new one takes the
// place of the others. Issues: "unknown-item", "unknown-key", "not-changed-here" (a key that is no value), those of
// read_cost_value, read_paid and check_entry, of the changed lines and of those that follow them by `same as`. Empty
// where all went well. `remarks` gets a sentence for each value that follows another no more. Thread-safe for distinct
// `costs`.
std::vector<Issue> apply_changes(const std::vector<CostChange>& changes, const evidence::CostBook& book,
                                 evidence::DossierCosts& costs, std::optional<evidence::CostValue>& paid,
                                 std::vector<std::string>& remarks);

}  // namespace grainside::cost

#endif  // GRAINSIDE_COST_CHANGES_H
