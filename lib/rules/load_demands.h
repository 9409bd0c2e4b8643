// Demands: for a concept, the standard test and the number that would support a claim of it (demands.yaml;
// rules/README.md, section 6).
#ifndef GRAINSIDE_RULES_LOAD_DEMANDS_H
#define GRAINSIDE_RULES_LOAD_DEMANDS_H

#include "document/faults.h"
#include "rules/book_data.h"

namespace grainside::rules {

// Fills the demands of `book`, whose vocabulary and sources are loaded. A book without the file demands nothing.
// Faults: "wrong-type", "unknown-key", "missing-key", "unknown-concept", "unknown-source", "duplicate-demand" (the same
// standard for the same kind of goods of a concept).
void load_demands(BookData& book, document::Faults& faults);

}  // namespace grainside::rules

#endif  // GRAINSIDE_RULES_LOAD_DEMANDS_H
