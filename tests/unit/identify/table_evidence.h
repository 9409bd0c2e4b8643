// Evidence of one frame in memory: candidates with their priors, methods with their tables. A slip is left out, so that
// textbook examples come out as printed.
#ifndef GRAINSIDE_TESTS_UNIT_IDENTIFY_TABLE_EVIDENCE_H
#define GRAINSIDE_TESTS_UNIT_IDENTIFY_TABLE_EVIDENCE_H

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "evidence/dossier_data.h"
#include "evidence/evidence_data.h"
#include "identify/question.h"

namespace grainside::support {

// Frame 0, of every part; the priors add up to 1.
evidence::EvidenceData frame_of(const std::vector<double>& priors);

// Chances of the outcomes by candidate, a row each. Gives the method's index.
using Rows = std::vector<std::vector<double>>;
std::size_t add_method(evidence::EvidenceData& data, const std::string& looks_at, const Rows& rows);

// Readings of the body: method and outcome.
evidence::PartRecord body_with(const std::vector<std::pair<std::size_t, std::size_t>>& readings);

// Is the first candidate true of the body?
identify::Question about_the_first(const evidence::EvidenceData& data);

}  // namespace grainside::support

#endif  // GRAINSIDE_TESTS_UNIT_IDENTIFY_TABLE_EVIDENCE_H
