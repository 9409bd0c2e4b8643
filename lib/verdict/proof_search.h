// What documents on file make of a listing's claims and findings.
#ifndef GRAINSIDE_VERDICT_PROOF_SEARCH_H
#define GRAINSIDE_VERDICT_PROOF_SEARCH_H

#include <cstddef>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "grainside/checker.h"

namespace grainside::verdict {

// Whether a document that names `standard` follows the one that is `asked`: the words of one of the standards asked
// (alternatives stand behind commas, semicolons, slashes between spaces or 'or'; what stands in brackets does not
// count) stand side by side in it, so that 'DIN EN ISO 811:2018' follows 'ISO 811', and 'ISO 5403' does not follow 'ISO
// 5403-1'.
bool follows_standard(std::string_view standard, std::string_view asked);

// The names under which a file of proofs may call a listing: its id, and where the reader made that from a file and a
// record's number, the file's base name with and without its ending.
std::vector<std::string_view> names_of(const Listing& listing);

// Keeps working memory; not thread-safe. What it is made from must outlive it.
class ProofSearch {
public:
    // `day`: YYYY-MM-DD; empty: documents hold on every day.
    ProofSearch(const RuleBook& book, std::shared_ptr<const FiledProofs> proofs, std::string day);

    // Fills `on_file` and `proofs_met` of `result`, whose mentions and findings stand, and takes the lifted findings
    // out.
    void lift(const Listing& listing, CheckResult& result);
    // Once of the findings only those are left that count: no claim is called lifted whose words one of these flags.
    static void mark_flagged(CheckResult& result);

private:
    struct Answer {
        std::uint32_t proof = kNoProof;
        ProofOutcome outcome = ProofOutcome::supports;
    };
    Answer best_for(const Claim& claim, const std::vector<std::string_view>& names, CheckResult& result) const;
    ProofOutcome outcome_of(const FiledProof& proof, ConceptId says) const;

    const RuleBook& book_;
    std::shared_ptr<const FiledProofs> proofs_;
    std::string day_;
    std::map<std::pair<ConceptId, Part>, Answer> answers_;  // of the listing at hand
};

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_PROOF_SEARCH_H
