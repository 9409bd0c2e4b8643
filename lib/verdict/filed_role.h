// The part that a document on file plays in a verdict. Thread-safe.
#ifndef GRAINSIDE_VERDICT_FILED_ROLE_H
#define GRAINSIDE_VERDICT_FILED_ROLE_H

#include <cstdint>

#include "grainside/checker.h"

namespace grainside::verdict {

enum class FiledRole : std::uint8_t {
    none,
    supports,
    overruled,  // it supports the claim, and readings decide against it
    not_enough  // it covers the claim and does not support it
};

struct FiledTold {
    const FiledProof* proof = nullptr;  // lives as long as the check's proofs; nullptr for `none`
    ProofOutcome outcome = ProofOutcome::supports;
    FiledRole role = FiledRole::none;
};

// What is to be told of the documents on a claim that has this grade, or would have it without them: nothing of words
// that mislead or mean nothing, and nothing of what does not support a claim that is decided.
FiledTold filed_on(const CheckResult& check, std::uint32_t claim, Grade grade);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_FILED_ROLE_H
