// Which entries of a book cite each source.
#ifndef GRAINSIDE_REPORT_SOURCE_USES_H
#define GRAINSIDE_REPORT_SOURCE_USES_H

#include <cstddef>
#include <string>
#include <vector>

#include "evidence/evidence_data.h"
#include "grainside/evidence_book.h"
#include "grainside/rule_book.h"

namespace grainside::report {

struct SourceUses {
    std::vector<const RuleInfo*> rules;
    std::vector<const evidence::Limit*> limits;
    std::vector<const evidence::Method*> methods;
    std::vector<const evidence::Alloy*> alloys;
    std::size_t demands = 0;  // entries of demands.yaml
    std::size_t costs = 0;    // entries of costs/
};

// One for each of book.sources(), in that order; without `evidence` only rules count. What it points to lives as long
// as the books.
std::vector<SourceUses> uses_of_sources(const RuleBook& book, const EvidenceBook* evidence);

// Whether a rule or limit made for one of `markets` cites the source; true where no market is asked for.
bool is_cited_for(const RuleBook& book, const SourceUses& uses, const std::vector<std::string>& markets);

// "3 rules, 1 limit"; "nothing cites it".
std::string counts_text(const SourceUses& uses);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_SOURCE_USES_H
