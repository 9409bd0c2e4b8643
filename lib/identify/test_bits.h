// What one more test is expected to tell about a question, given beliefs. Thread-safe.
#ifndef GRAINSIDE_IDENTIFY_TEST_BITS_H
#define GRAINSIDE_IDENTIFY_TEST_BITS_H

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "evidence/evidence_data.h"
#include "identify/part_beliefs.h"
#include "identify/question.h"

namespace grainside::identify {

// The method reads the quantity or works it out. "content.Ni" is read by whoever reads "content".
bool reads_quantity(const evidence::Method& method, std::string_view quantity) noexcept;

// The method measures what the question's limits ask, and is meant for such parts: a test of metals is not made on a
// strap of leather because both hold chromium.
bool measures_for(const evidence::Method& method, const Question& question, std::string_view quantity) noexcept;

// What damping leaves of one more reading by `method` behind those by `made`, 0 to 1.
double share_behind(const evidence::EvidenceData& data, std::span<const std::size_t> made, std::size_t method) noexcept;

// The chances of the method's outcomes, [candidate * outcome count + outcome], flattened by damping; a candidate's add
// up to 1. Empty where the method says nothing of the frame.
std::vector<double> outcome_chances(const evidence::EvidenceData& data, std::size_t method, std::size_t frame,
                                    double share);

// Bits about the question as `view` looks at it, from `belief` over the candidates of its frame. Where nothing is
// claimed (`says` 0) each candidate is a class of its own.
double frame_bits(const std::vector<double>& belief, const FrameView& view, ConceptId says,
                  const std::vector<double>& chances, std::size_t outcome_count);

// The method that tells most about the question per effort, on top of what is on record; nothing where none reaches
// Judging::least_bits.
std::optional<std::size_t> most_telling(const evidence::EvidenceData& data, const PartEvidence& part,
                                        const Question& question);

}  // namespace grainside::identify

#endif  // GRAINSIDE_IDENTIFY_TEST_BITS_H
