#include "identify/claim_bearing.h"

#include <algorithm>

namespace grainside::identify {
namespace {

using evidence::Candidate;
using vocabulary::ConceptTree;

bool any_below(const ConceptTree& tree, const std::vector<ConceptId>& concepts, ConceptId ancestor) {
    return std::any_of(concepts.begin(), concepts.end(), [&](ConceptId id) { return tree.is_a(id, ancestor); });
}

bool is_true_of(const ConceptTree& tree, const Candidate& candidate, ConceptId says) {
    return (candidate.is != 0 && tree.is_a(candidate.is, says)) || any_below(tree, candidate.bears_out, says);
}

// Traits are shared by things that have nothing else in common: wool is animal-derived as leather is.
bool is_trait(const ConceptTree& tree, ConceptId id) {
    return tree[id].name.starts_with("trait-");
}

// The candidates of which one of the nearest ancestors of `says` that any candidate has is true.
std::vector<bool> kin_of(const ConceptTree& tree, const evidence::Frame& frame, ConceptId says) {
    std::vector<bool> kin(frame.candidates.size(), false);
    std::vector<ConceptId> level = tree[says].parents;
    while (!level.empty()) {
        bool found = false;
        std::vector<ConceptId> next;
        for (const ConceptId ancestor : level) {
            if (ancestor == 0 || is_trait(tree, ancestor)) continue;
            for (std::size_t i = 0; i < frame.candidates.size(); ++i) {
                if (!is_true_of(tree, frame.candidates[i], ancestor)) continue;
                kin[i] = true;
                found = true;
            }
            next.insert(next.end(), tree[ancestor].parents.begin(), tree[ancestor].parents.end());
        }
        if (found) break;
        level = std::move(next);
    }
    return kin;
}

}  // namespace

bool any_above(const ConceptTree& tree, std::span<const ConceptId> concepts, ConceptId id) {
    return std::any_of(concepts.begin(), concepts.end(), [&](ConceptId above) { return tree.is_a(id, above); });
}

std::vector<Bearing> bearings_of(const ConceptTree& tree, const evidence::Frame& frame, ConceptId says) {
    std::vector<Bearing> bearings;
    bearings.reserve(frame.candidates.size());
    const bool someone = std::any_of(frame.candidates.begin(), frame.candidates.end(),
                                     [&](const Candidate& candidate) { return is_true_of(tree, candidate, says); });
    const std::vector<bool> kin =
        someone ? std::vector<bool>(frame.candidates.size(), false) : kin_of(tree, frame, says);
    for (std::size_t i = 0; i < frame.candidates.size(); ++i) {
        const Candidate& candidate = frame.candidates[i];
        Bearing bearing = Bearing::fails;
        if (is_true_of(tree, candidate, says)) {
            bearing = Bearing::holds;
        } else if (any_above(tree, candidate.rules_out, says)) {
            bearing = Bearing::fails;
        } else if (any_above(tree, candidate.leaves_open, says) || candidate.is == 0 || tree.is_a(says, candidate.is) ||
                   (kin[i] && !frame.kin_apart)) {
            bearing = Bearing::open;
        }
        bearings.push_back(bearing);
    }
    return bearings;
}

bool asks(const ConceptTree& tree, const evidence::Frame& frame, Part part, ConceptId says) {
    return (frame.parts & evidence::part_bit(part)) != 0 && any_above(tree, frame.claims, says);
}

}  // namespace grainside::identify
