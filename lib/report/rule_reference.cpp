#include "report/rule_reference.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <map>
#include <string_view>

#include "evidence/evidence_data.h"
#include "grainside/version.h"
#include "report/html/rules_page.h"
#include "report/rules_manual.h"
#include "report/view_text.h"
#include "rules/book_data.h"

namespace grainside::report {
namespace {

template <typename Entries>
std::map<std::string_view, std::size_t> count_by_market(const Entries& entries) {
    std::map<std::string_view, std::size_t> counts;
    for (const auto& entry : entries) {
        for (const std::string& market : entry.markets) ++counts[market];
    }
    return counts;
}

std::vector<ToldMarket> told_markets(const RuleBook& book, const EvidenceBook* evidence) {
    const auto rules = count_by_market(book.rules());
    const auto limits = evidence == nullptr ? decltype(rules){} : count_by_market(evidence->data().limits);
    const auto count_in = [](const auto& counts, std::string_view market) {
        const auto found = counts.find(market);
        return found == counts.end() ? std::size_t{0} : found->second;
    };
    std::vector<ToldMarket> markets;
    for (const rules::Market& market : book.data().markets) {
        markets.push_back({market.name, std::string(book.market_name(market.name)), market.within,
                           count_in(rules, market.name), count_in(limits, market.name)});
    }
    return markets;
}

}  // namespace

RuleReference::RuleReference(const RuleBook& book, const EvidenceBook* evidence)
    : book_(book),
      teller_(book),
      groups_(rule_groups(book)),
      uses_(uses_of_sources(book, evidence)),
      markets_(told_markets(book, evidence)) {}

void RuleReference::append_page(std::string& out) const {
    append_rules_page(*this, out);
}

void RuleReference::append_manual(std::string& out) const {
    append_rules_manual(*this, out);
}

std::string RuleReference::counts() const {
    return fmt::format("Rule book {} of Grainside {}: {} in {}, {}, {}.", book_.digest(), kVersion,
                       counted(book_.rules().size(), "rule", "rules"), counted(groups_.size(), "group", "groups"),
                       counted(book_.sources().size(), "source", "sources"),
                       counted(markets_.size(), "market", "markets"));
}

std::string own_entries_text(const ToldMarket& market) {
    if (market.rules == 0 && market.limits == 0) {
        return market.within.empty() ? "no rules of its own in this book; general rules only"
                                     : fmt::format("no rules of its own in this book; those of {} and general rules",
                                                   fmt::join(market.within, ", "));
    }
    std::string text = counted(market.rules, "rule", "rules");
    if (market.limits > 0) text += " and " + counted(market.limits, "limit", "limits");
    return text + " of its own" +
           (market.within.empty() ? std::string()
                                  : fmt::format(", besides those of {}", fmt::join(market.within, ", ")));
}

}  // namespace grainside::report
