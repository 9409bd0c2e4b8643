// The proof texts of a book as the grammar reads them.
#ifndef GRAINSIDE_VERDICT_EXAMINATION_PROOF_TEXTS_H
#define GRAINSIDE_VERDICT_EXAMINATION_PROOF_TEXTS_H

#include <cstdint>
#include <span>
#include <vector>

#include "grainside/claim.h"
#include "grainside/listing.h"
#include "grainside/rule_book.h"
#include "rules/book_data.h"
#include "rules/condition.h"

namespace grainside::verdict {

inline constexpr std::uint32_t kNoModel = 0xffffffff;

// For each rule the index of the one that it is like, or kNoModel.
std::vector<std::uint32_t> models_of(std::span<const RuleInfo> rules);

// Whether the proof of a rule is that of its model.
bool shares_proof(const RuleInfo& rule, const RuleInfo& model) noexcept;

struct ReadText {
    std::vector<Field> fields;  // views into the book's proofs
    std::vector<Claim> claims;
    rules::ListingFacts facts;
};

// Texts to flag and texts to pass of every rule, in the order of the book; those that a rule takes over from its model
// are not read again.
std::vector<ReadText> read_proof_texts(const rules::BookData& book, std::span<const std::uint32_t> models);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_EXAMINATION_PROOF_TEXTS_H
