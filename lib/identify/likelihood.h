// How well each candidate of a frame explains a reading.
#ifndef GRAINSIDE_IDENTIFY_LIKELIHOOD_H
#define GRAINSIDE_IDENTIFY_LIKELIHOOD_H

#include <vector>

#include "evidence/dossier_data.h"
#include "evidence/evidence_data.h"

namespace grainside::identify {

// Natural logarithms of the likelihoods of `reading`, by candidate of `frame`, up to a constant that all share; empty
// where the reading says nothing of the frame. A quantity with likelihoods of its own is preferred to the outcome word
// beside it.
//
// Every likelihood is mixed with that of a slip (Judging::slip): half of them take another sample in hand, of whatever
// sort is common, half give anything at all. So a reading that no candidate explains tells none of them apart, and no
// single reading, however sharp, weighs more than about 1/slip to 1. Thread-safe.
std::vector<double> log_likelihoods(const evidence::EvidenceData& data, std::size_t frame,
                                    const evidence::Reading& reading);

// The chance of each outcome given a candidate, with the slip mixed in; `table` belongs to `method`.
double outcome_chance(const evidence::EvidenceData& data, const evidence::Method& method,
                      const evidence::OutcomeTable& table, std::size_t candidate, std::size_t outcome) noexcept;

// The table of `method` for `frame`; nullptr where it has none.
const evidence::OutcomeTable* table_for(const evidence::Method& method, std::size_t frame) noexcept;

}  // namespace grainside::identify

#endif  // GRAINSIDE_IDENTIFY_LIKELIHOOD_H
