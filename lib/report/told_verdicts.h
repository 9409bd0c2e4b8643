// Verdicts as people are told them: part by part, and what states the same once. Thread-safe.
#ifndef GRAINSIDE_REPORT_TOLD_VERDICTS_H
#define GRAINSIDE_REPORT_TOLD_VERDICTS_H

#include <cstddef>
#include <cstdint>
#include <map>
#include <vector>

#include "grainside/concessions.h"
#include "grainside/judge.h"

namespace grainside::report {

struct ToldVerdict {
    std::size_t at = 0;                 // the first of them, index into Judgement::verdicts
    const Verdict* verdict = nullptr;   // the same; lives as long as the judgement
    std::vector<std::uint32_t> places;  // mentions of Judgement::check, in their order
};

// By part, in the order of the claims: statements that say the same of one part, got the same verdict and stand under
// the same concession are one. Empty for a judgement without a listing.
std::map<Part, std::vector<ToldVerdict>> told_by_part(const Judgement& judgement, const Conceded* conceded = nullptr);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_TOLD_VERDICTS_H
