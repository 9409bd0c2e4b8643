// Lists of percentages of a whole: the elements of an alloy, the fibres of a cloth.
#ifndef GRAINSIDE_EVIDENCE_SHARE_LIST_H
#define GRAINSIDE_EVIDENCE_SHARE_LIST_H

#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "evidence/entry_reader.h"
#include "measure/measured.h"

namespace grainside::evidence {

using ShareList = std::vector<std::pair<std::string, measure::Measured>>;

// A mapping of names to shares with their uncertainties, in percent. `is_known` tells of a name's node whether the name
// is one, and reports it where not. Faults: those of read_measured in quantity_reader.h, "wrong-type", "empty-reading",
// and "above-100" where the shares add up to more than 100 % by more than three standard uncertainties of the sum.
ShareList read_share_list(const EntryReader& reader, document::Node node,
                          const std::function<bool(document::Node)>& is_known);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_SHARE_LIST_H
