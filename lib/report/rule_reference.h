// The whole rule book to read: every rule in sentences, then the sources, then the markets.
#ifndef GRAINSIDE_REPORT_RULE_REFERENCE_H
#define GRAINSIDE_REPORT_RULE_REFERENCE_H

#include <string>
#include <vector>

#include "grainside/evidence_book.h"
#include "grainside/rule_book.h"
#include "report/rule_facts.h"
#include "report/source_uses.h"
#include "report/told_rule.h"

namespace grainside::report {

// A market with what the book has for it.
struct ToldMarket {
    std::string code;                 // "it"
    std::string name;                 // "Italy"
    std::vector<std::string> within;  // "eu"
    std::size_t rules = 0;            // that name it
    std::size_t limits = 0;
};

// The same book gives the same bytes. Immutable once made; the books must outlive it.
class RuleReference {
public:
    // `evidence` may be missing; limits and methods are not counted then.
    RuleReference(const RuleBook& book, const EvidenceBook* evidence);

    // A page as the HTML Standard has it, self-contained: styles inside, no script, nothing fetched. A rule has the
    // anchor `rule-ID`, a source `source-ID`, a group `group-NAME`.
    void append_page(std::string& out) const;
    // grainside-rules(7), in roff with the macros of man(7).
    void append_manual(std::string& out) const;

    const RuleBook& book() const noexcept { return book_; }
    const std::vector<RuleGroup>& groups() const noexcept { return groups_; }
    const std::vector<SourceUses>& uses() const noexcept { return uses_; }
    const std::vector<ToldMarket>& markets() const noexcept { return markets_; }
    ToldRule tell(const RuleInfo& rule) const { return teller_.tell(rule); }

    // "Rule book 0123456789abcdef of Grainside 0.1.0: 91 rules in 18 groups, 70 sources, 20 markets."
    std::string counts() const;

private:
    const RuleBook& book_;
    RuleTeller teller_;
    std::vector<RuleGroup> groups_;
    std::vector<SourceUses> uses_;
    std::vector<ToldMarket> markets_;
};

// "3 rules and 1 limit of its own", "no rules of its own in this book; general rules only".
std::string own_entries_text(const ToldMarket& market);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_RULE_REFERENCE_H
