// How a claim compares with what a part may be made of (rules/EVIDENCE.md, section 1).
#ifndef GRAINSIDE_IDENTIFY_CLAIM_BEARING_H
#define GRAINSIDE_IDENTIFY_CLAIM_BEARING_H

#include <cstdint>
#include <span>
#include <vector>

#include "evidence/evidence_data.h"
#include "vocabulary/concept_tree.h"

namespace grainside::identify {

// What a candidate makes of a claim: true of it, false of it, or told apart by nothing.
enum class Bearing : std::uint8_t { holds, fails, open };

// `id` is one of `concepts` or lies below one.
bool any_above(const vocabulary::ConceptTree& tree, std::span<const ConceptId> concepts, ConceptId id);

// By candidate of `frame`, in its order. `says` is a concept of the tree. Thread-safe.
std::vector<Bearing> bearings_of(const vocabulary::ConceptTree& tree, const evidence::Frame& frame, ConceptId says);

// The frame's question is about `part`, and `says` is one of its claims or lies below one.
bool asks(const vocabulary::ConceptTree& tree, const evidence::Frame& frame, Part part, ConceptId says);

}  // namespace grainside::identify

#endif  // GRAINSIDE_IDENTIFY_CLAIM_BEARING_H
