// Which rules hold for the claims of one listing.
#ifndef GRAINSIDE_RULES_RULE_MATCHER_H
#define GRAINSIDE_RULES_RULE_MATCHER_H

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "grainside/claim.h"
#include "grainside/finding.h"
#include "rules/book_data.h"
#include "rules/gate.h"
#include "rules/rule_selection.h"

namespace grainside::rules {

// Keeps its working memory between listings. Not thread-safe; one a thread.
class RuleMatcher {
public:
    explicit RuleMatcher(const BookData& book);

    // Which rules are in force: those of no market and of `markets` (with what these lie within) on day `on`
    // (YYYY-MM-DD; empty = any day). Cheap where these were selected before. Call before `match`.
    void select(std::span<const std::string> markets, std::string_view on);

    // Appends every finding of every rule that holds. `claims` are those of one listing, in the order of the text.
    void match(std::span<const Claim> claims, const ListingFacts& listing, std::vector<Finding>& findings);

    // Of how many claims `rule`, which need not be of the book, would speak if it stood alone. `select` does not
    // matter.
    std::size_t count_alone(const CompiledRule& rule, std::span<const Claim> claims, const ListingFacts& listing);

private:
    bool has_company(const CompiledRule& rule, std::span<const Claim> claims, std::uint32_t at,
                     const ListingFacts& listing, std::uint32_t& against) const;
    std::uint32_t find_beside(std::span<const Claim> claims, std::uint32_t at, const ListingFacts& listing,
                              const std::vector<BesideCondition>& conditions) const;
    bool same_country(const Claim& claim, const Claim& other) const;
    bool fits(const BesideCondition& condition, const Claim& claim, const Claim& other) const;
    std::uint64_t candidates(const BesideCondition& condition, const Claim& claim) const noexcept;
    std::uint32_t find_among_few(std::span<const Claim> claims, std::uint32_t at, const ListingFacts& listing,
                                 const std::vector<BesideCondition>& conditions) const;
    void take_in(std::span<const Claim> claims);

    bool is_present(const ClaimCondition& condition) const noexcept;

    const BookData& book_;
    std::vector<Gate> gates_;         // by rule
    std::vector<Gate> unless_gates_;  // by rule: where one does not admit a claim, no `unless` of the rule holds
    RuleSelections selections_;
    const RuleSelection* selected_ = nullptr;
    // Of a listing with few claims: which of them are what, one bit a claim.
    std::uint64_t all_ = 0;
    std::uint64_t negated_ = 0;
    std::array<std::uint64_t, kPartCount> of_part_{};
    std::array<std::uint64_t, kKindCount> of_kind_{};
    std::uint32_t kinds_said_ = 0;  // of any listing: the kinds that its claims have
    // Of one with many: what its claims say; most conditions on another statement fail on that.
    vocabulary::ConceptSet said_;
    // The first and the last of the claims that differ in nothing but their place: a record that says one thing a
    // thousand times costs twice as much as one that says it once. Of places, conditions ask whether one is in another
    // field, stands behind the claim or is the claim itself; where any of those that look alike meets that, one of
    // these two does.
    struct Alike {
        std::uint32_t first, last;
    };
    std::vector<Alike> distinct_;
    std::vector<std::uint32_t> seen_;  // slots with an index into distinct_, or kNoClaim
};

}  // namespace grainside::rules

#endif  // GRAINSIDE_RULES_RULE_MATCHER_H
