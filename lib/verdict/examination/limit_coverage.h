// Which answers the limits of the evidence half have given over dossiers.
#ifndef GRAINSIDE_VERDICT_EXAMINATION_LIMIT_COVERAGE_H
#define GRAINSIDE_VERDICT_EXAMINATION_LIMIT_COVERAGE_H

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "grainside/judge.h"
#include "verdict/examination/examiner.h"

namespace grainside::verdict {

// Not thread-safe.
class LimitCoverage {
public:
    LimitCoverage(const RuleBook& book, const EvidenceBook& evidence);

    // Judges `dossier` in the market that its listing names, then in each market of the book that has limits
    // of its own: a limit that another market's takes the place of is asked too.
    void add(const Dossier& dossier);

    std::uint32_t dossiers() const noexcept { return dossiers_; }
    // Two clauses for a limit that can both contradict and support, one for the others, in the order of the book.
    std::vector<ClauseCoverage> clauses() const;

private:
    struct Seen {
        bool contradicts = false, supports = false, met = false, undecided = false, unread = false;
    };
    void take_down(const Judgement& judgement);

    const RuleBook& book_;
    const EvidenceBook& evidence_;
    std::vector<Judge> judges_;
    std::map<std::string, Seen, std::less<>> seen_;
    std::uint32_t dossiers_ = 0;
};

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_EXAMINATION_LIMIT_COVERAGE_H
