// Checking listings: text in, claims and graded findings out.
//
//     grainside::Checker checker(book, {.markets = {"eu"}, .on = "2026-09-26"});
//     grainside::Listing listing;
//     listing.fields = {{"name", "Genuine PU leather tote"}, {"description", "Carbon neutral."}};
//     const grainside::CheckResult& result = checker.check(listing);
//     std::cout << result.claim_count << " claims\n";
//     // prints: 2 claims
//     for (const grainside::Finding& finding : result.findings) {
//         const grainside::RuleInfo& rule = book.rules()[finding.rule];
//         std::cout << grainside::name_of(finding.grade) << " by " << rule.id << " and "
//                   << book.sources()[rule.sources.front()].id << ": say '" << checker.say_instead(listing, finding)
//                   << "'\n";
//     }
//     // prints: misleading by genuine-on-imitation-eu and eu-en15987-scope: say 'imitation leather'
//     // prints: unsupported by carbon-neutral-unproven and us-260-5: say ''
//
//     // The same listing on another day, without reading it again.
//     const grainside::CheckResult& later = checker.check_again(listing, {.markets = {"eu"}, .on = "2026-09-27"});
//     for (const grainside::Finding& finding : later.findings) std::cout << grainside::name_of(finding.grade) << '\n';
//     // prints: misleading
//     // prints: misleading
//
// A checker keeps its working memory from one listing to the next, so that a catalog is checked without allocating for
// each. Not thread-safe: make one a thread; they may share one RuleBook, which must outlive them. Checking never fails:
// no text, however odd, yields an error. The same listing and book give the same result on every machine and thread.
#ifndef GRAINSIDE_CHECKER_H
#define GRAINSIDE_CHECKER_H

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/claim.h"
#include "grainside/filed_proofs.h"
#include "grainside/finding.h"
#include "grainside/listing.h"
#include "grainside/rule_book.h"

namespace grainside {
inline namespace v0 {

struct CheckOptions {
    // Rules of these markets apply, besides those of no market. ISO 3166-1 alpha-2 in lower case, and "eu" (which the
    // member states imply). Empty: the markets that the listing names (Listing::region), besides those of no market.
    std::vector<std::string> markets = {};
    // The day whose rules apply, YYYY-MM-DD. Empty: every rule whatever its dates; the tools pass today.
    std::string on = {};
    // Documents on file that lift findings of grade unsupported, and those of rules that a document beside the words
    // would silence; nullptr: none, and nothing is asked of them.
    std::shared_ptr<const FiledProofs> proofs = nullptr;
    // The day on which they must hold, YYYY-MM-DD. Empty: that of `on`; where that is empty too, any.
    std::string proofs_on = {};
};

// What the documents on file make of a claim that at least one of them covers.
struct ClaimOnFile {
    std::uint32_t claim = 0;         // index into CheckResult::mentions
    std::uint32_t proof = kNoProof;  // index into FiledProofs::all(): one that supports it, else one that tells why not
    ProofOutcome outcome = ProofOutcome::supports;
    // Whether a finding was lifted; then its rule (index into RuleBook::rules()) and its words in the claim's field.
    // Not where a finding that no document lifts stands on these words.
    bool lifted = false;
    std::uint32_t rule = 0;
    std::uint32_t start = 0;
    std::uint32_t end = 0;
};

struct CheckResult {
    // Claims and mentions, sorted by field, start, end, kind. Those of is_claim_kind() are the listing's claims.
    std::vector<Claim> mentions;
    // Sorted by field, start, grade, rule.
    std::vector<Finding> findings;
    std::uint32_t claim_count = 0;      // mentions that are claims
    std::uint32_t fields_too_long = 0;  // fields over kMaxFieldBytes, which were not read
    // The kind of product, a number of the book's (0: unknown), and its main outside part: what a claim in a title
    // speaks of.
    std::uint8_t category = 0;
    Part main_part = Part::body;

    // Of a check with CheckOptions::proofs only, else nullptr and empty. The set lives as long as the checker that made
    // the result has it.
    const FiledProofs* proofs = nullptr;
    std::vector<ClaimOnFile> on_file;       // sorted by claim, each once
    std::vector<std::uint32_t> proofs_met;  // entries that cover a claim, whatever they make of it; sorted
};

// What documents on file make of the claim `claim` (an index into CheckResult::mentions); nullptr where none covers it.
const ClaimOnFile* on_file(const CheckResult& result, std::uint32_t claim) noexcept;

class Checker {
public:
    explicit Checker(const RuleBook& book, CheckOptions options = {});
    Checker(Checker&&) noexcept;
    Checker& operator=(Checker&&) noexcept;
    ~Checker();

    // The result lives until the next call.
    const CheckResult& check(const Listing& listing);

    // The listing that was checked last, asked again for other markets or another day without reading it again; these
    // options hold from now on. REQUIRES: `listing` went into the last `check`, and its bytes are what they were.
    const CheckResult& check_again(const Listing& listing, CheckOptions options);

    // What to write instead of the words of `finding`, which must come from the last check of `listing`; "" where the
    // rule offers nothing, nothing else than these words, or nothing that the same check would let pass.
    std::string say_instead(const Listing& listing, const Finding& finding) const;

    // The same without asking whether it passes: the rule's template filled in.
    std::string filled_template(const Listing& listing, const Finding& finding) const;

    // Whether `wording`, as a description by itself, gets no finding in the markets and on the day that count for
    // `listing`. Answers are remembered; a rule's suggestion repeats many times in a catalog.
    bool passes_itself(const Listing& listing, const std::string& wording) const;

private:
    struct Workspace;
    std::unique_ptr<Workspace> work_;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_CHECKER_H
