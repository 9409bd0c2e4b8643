// Proofs on file as they are looked up: by concept, then by listing.
#ifndef GRAINSIDE_EVIDENCE_PROOF_INDEX_H
#define GRAINSIDE_EVIDENCE_PROOF_INDEX_H

#include <cstdint>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "grainside/filed_proofs.h"

namespace grainside {
inline namespace v0 {

// Immutable once filled. Numbers are indices into `all`, ascending.
struct FiledProofs::Index {
    struct OfConcept {
        std::vector<std::uint32_t> of_any_listing;
        std::map<std::string, std::vector<std::uint32_t>, std::less<>> of_listing;
    };

    void add(FiledProof proof);

    std::vector<FiledProof> all;
    std::map<ConceptId, OfConcept> of_concept;  // by what an entry's scope says
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_EVIDENCE_PROOF_INDEX_H
