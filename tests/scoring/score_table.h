// Counts of what was right, the ratios made of them, and the tables that show them.
#ifndef GRAINSIDE_TESTS_SCORING_SCORE_TABLE_H
#define GRAINSIDE_TESTS_SCORING_SCORE_TABLE_H

#include <array>
#include <cstddef>
#include <optional>
#include <string>

#include "grainside/claim.h"
#include "grainside/finding.h"

namespace grainside::scoring {

inline constexpr std::size_t kGradeCount = 6;

struct Tally {
    std::size_t labels = 0;
    std::size_t found = 0;
    std::size_t right = 0;  // at most either of them

    // Between 0 and 1; none where there is nothing to divide by.
    std::optional<double> precision() const noexcept;
    std::optional<double> recall() const noexcept;
    // Harmonic mean, as 2 right / (labels + found).
    std::optional<double> f1() const noexcept;
};

struct ClaimTally : Tally {
    std::size_t exact = 0;  // of `right`: exactly the words of the label
    std::size_t part_right = 0;
    std::size_t says_labelled = 0;  // of `right`: the label has a concept
    std::size_t says_right = 0;
};

struct Scores {
    std::size_t listings = 0;
    std::array<ClaimTally, kKindCount> claims;
    std::array<Tally, kGradeCount> findings;
    std::size_t traps = 0;
    std::size_t traps_passed = 0;
    std::size_t honest = 0;         // honest listings whose findings are labelled
    std::size_t honest_silent = 0;  // of these: without any finding
    // Whether any listing had labels of this sort; a table without is left out.
    bool has_claims = false;
    bool has_findings = false;
    bool has_traps = false;

    ClaimTally& claims_of(Kind kind) { return claims[static_cast<std::size_t>(kind)]; }
    Tally& findings_of(Grade grade) { return findings[static_cast<std::size_t>(grade)]; }
    ClaimTally all_claims() const noexcept;
    Tally all_findings() const noexcept;
};

// Shares below which the run fails; each between 0 and 1.
struct Limits {
    std::optional<double> claims_f1 = {};
    std::optional<double> findings_precision = {};
    std::optional<double> findings_recall = {};
    std::optional<double> traps = {};
};

// Kinds and grades that neither stand in a label nor were found are left out. Shares are per cent.
std::string to_tables(const Scores& scores);

// One line a limit that is not reached, "" where all are. What cannot be computed does not reach any limit.
std::string shortfalls(const Scores& scores, const Limits& limits);

}  // namespace grainside::scoring

#endif  // GRAINSIDE_TESTS_SCORING_SCORE_TABLE_H
