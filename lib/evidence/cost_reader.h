// The `costs` of a dossier (rules/EVIDENCE.md, section 9), and the price that was paid.
#ifndef GRAINSIDE_EVIDENCE_COST_READER_H
#define GRAINSIDE_EVIDENCE_COST_READER_H

#include <cstddef>

#include "evidence/dossier_data.h"
#include "evidence/entry_reader.h"

namespace grainside::evidence {

// Lines over all groups.
inline constexpr std::size_t kMaxCostLines = 100;

// The `price` of a sample as money; the text itself is kept by whoever reads the sample. Faults: "bad-price",
// "decimal-comma".
void read_price(const EntryReader& reader, document::Node price, const EvidenceData& data, DossierData& dossier);

// Fills `dossier.costs`; the sample and the listing are read already. Faults: those of read_cost_value and check_entry
// in cost_value.h, and "unknown-key", "wrong-type", "unknown-part", "unknown-concept", "unknown-market",
// "unknown-base", "unknown-currency", "missing-currency" (nothing says in which one totals stand), "missing-key" (`of`
// or `base` without what they belong to), "duplicate-item", "unknown-item", "not-before" (a share of what comes later),
// "no-duty-base", "both-ways", "too-many-lines".
void read_costs(const EntryReader& reader, document::Node costs, const EvidenceData& data, DossierData& dossier);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_COST_READER_H
