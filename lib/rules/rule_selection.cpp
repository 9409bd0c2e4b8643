#include "rules/rule_selection.h"

#include <algorithm>

#include "rules/references.h"

namespace grainside::rules {

namespace {

// About 200 KB each for the built-in book. A hostile catalog may name ever new sets of markets.
constexpr std::size_t kMostSelections = 32;

}  // namespace

RuleSelection::RuleSelection(const BookData& book, std::span<const std::string> markets, std::string_view on)
    : markets_(markets.begin(), markets.end()), day_(on) {
    const std::vector<std::string_view> reach = reach_of(markets, book.markets);
    std::vector<char> in_force(book.rules.size());
    for (std::size_t i = 0; i < book.rules.size(); ++i) {
        const RuleInfo& rule = book.rules[i];
        in_force[i] = holds_in(rule.markets, reach) && InForce{rule.from, rule.until}.on(on) ? 1 : 0;
    }
    first_.reserve(book.by_concept.size() + 1);
    for (const std::vector<std::uint32_t>& of_concept : book.by_concept) {
        first_.push_back(static_cast<std::uint32_t>(rules_.size()));
        std::copy_if(of_concept.begin(), of_concept.end(), std::back_inserter(rules_),
                     [&](std::uint32_t rule) { return in_force[rule] != 0; });
    }
    first_.push_back(static_cast<std::uint32_t>(rules_.size()));
}

bool RuleSelection::is_of(std::span<const std::string> markets, std::string_view on) const noexcept {
    return day_ == on && std::equal(markets.begin(), markets.end(), markets_.begin(), markets_.end());
}

const RuleSelection& RuleSelections::of(std::span<const std::string> markets, std::string_view on) {
    if (last_ < kept_.size() && kept_[last_].is_of(markets, on)) return kept_[last_];
    const auto known = std::find_if(kept_.begin(), kept_.end(),
                                    [&](const RuleSelection& selection) { return selection.is_of(markets, on); });
    if (known != kept_.end()) {
        last_ = static_cast<std::size_t>(known - kept_.begin());
    } else if (kept_.size() < kMostSelections) {
        last_ = kept_.size();
        kept_.emplace_back(book_, markets, on);
    } else {
        last_ = (last_ + 1) % kMostSelections;
        kept_[last_] = RuleSelection(book_, markets, on);
    }
    return kept_[last_];
}

}  // namespace grainside::rules
