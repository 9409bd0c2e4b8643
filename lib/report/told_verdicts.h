// Verdicts as people are told them: part by part, and what states the same once. Thread-safe.
#ifndef GRAINSIDE_REPORT_TOLD_VERDICTS_H
#define GRAINSIDE_REPORT_TOLD_VERDICTS_H

#include <cstdint>
#include <map>
#include <vector>

#include "grainside/judge.h"

namespace grainside::report {

struct ToldVerdict {
    const Verdict* verdict;             // of the first of them; lives as long as the judgement
    std::vector<std::uint32_t> places;  // mentions of Judgement::check, in their order
};

// By part, in the order of the claims: statements that say the same of one part and got the same verdict are one. Empty
// for a judgement without a listing.
std::map<Part, std::vector<ToldVerdict>> told_by_part(const Judgement& judgement);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_TOLD_VERDICTS_H
