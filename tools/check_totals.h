// What a run over many listings comes to.
#ifndef GRAINSIDE_TOOLS_CHECK_TOTALS_H
#define GRAINSIDE_TOOLS_CHECK_TOTALS_H

#include <array>
#include <cstdint>
#include <string>

#include "grainside/checker.h"
#include "grainside/concessions.h"

namespace grainside::tools {

class CheckTotals {
public:
    // `conceded`, if any, is of `result`: what stands under a concession counts apart.
    void add(const CheckResult& result, const Conceded* conceded);

    void add(const CheckTotals& others) noexcept;

    std::uint64_t listings() const noexcept { return listings_; }
    // Grade::consistent where nothing was found.
    Grade worst() const noexcept;

    // "3 listings, 2 with findings: 2 misleading, 1 vague; 1 conceded; 12 claims" and a blank line; nothing for a
    // single listing, whose own summary says it.
    void append_text(std::string& out) const;

private:
    std::uint64_t listings_ = 0;
    std::uint64_t with_findings_ = 0;
    std::uint64_t claims_ = 0;
    std::uint64_t conceded_ = 0;
    std::array<std::uint64_t, 6> of_grade_{};
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_CHECK_TOTALS_H
