// What the views of markets have in common: the same finding in several markets, told once. Thread-safe.
#ifndef GRAINSIDE_REPORT_MARKET_FACTS_H
#define GRAINSIDE_REPORT_MARKET_FACTS_H

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/market_report.h"

namespace grainside::report {

// What to write instead: a wording that passes, else what a person can do.
struct MarketAdvice {
    std::string_view label;  // "say instead", "remedy"; empty: nothing is known
    std::string text;
    bool leave_out = false;  // the words can be taken out
};
MarketAdvice advice_of(const RuleBook& book, const MarketFinding& finding);

std::string_view words_of(const Listing& listing, std::uint32_t field, std::uint32_t start, std::uint32_t end);

// A text and the markets for which it is told.
struct TextOfMarkets {
    std::string text;
    std::vector<std::string> markets;
};

// The same words with the same grade and the same advice, in all markets that the copy must be changed for.
struct SharedFinding {
    std::string words;
    Grade grade = Grade::vague;
    MarketAdvice advice;
    std::vector<std::string> fields;   // where the words stand
    std::vector<std::string> markets;  // in the order of the call
    std::vector<TextOfMarkets> reasons, cites, rules;
};

// In the order of the first market that has each: what keeps the copy from standing.
std::vector<SharedFinding> shared_findings(const MarketContext& context);

// The same change of the same words on one day, in all markets that have it.
struct SharedChange {
    std::string day;
    std::string text;  // "'eco-friendly' (description) will be misleading, now vague [generic-green-eu]"
    std::vector<std::string> markets;
};
// Sorted by day.
std::vector<SharedChange> shared_changes(const MarketContext& context);

// "us, eu, it".
std::string market_list(const std::vector<std::string>& markets);
// Of many: "us, eu, it and 12 more".
std::string short_market_list(const std::vector<std::string>& markets);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_MARKET_FACTS_H
