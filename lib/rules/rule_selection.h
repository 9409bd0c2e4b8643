// The rules in force for some markets on one day.
#ifndef GRAINSIDE_RULES_RULE_SELECTION_H
#define GRAINSIDE_RULES_RULE_SELECTION_H

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/claim.h"
#include "rules/book_data.h"

namespace grainside::rules {

// By concept, so that a claim meets only what is in force.
class RuleSelection {
public:
    // Rules of no market and of `markets` (with what these lie within) on day `on` (YYYY-MM-DD; empty = any day).
    RuleSelection(const BookData& book, std::span<const std::string> markets, std::string_view on);

    bool is_of(std::span<const std::string> markets, std::string_view on) const noexcept;
    // Indices of the rules whose `when` can hold for a claim that says `id`, in book order.
    std::span<const std::uint32_t> rules_of(ConceptId id) const noexcept {
        return std::span(rules_).subspan(first_[id], first_[id + std::size_t{1}] - first_[id]);
    }

private:
    std::vector<std::string> markets_;
    std::string day_;
    std::vector<std::uint32_t> rules_;  // of all concepts, one behind the other
    std::vector<std::uint32_t> first_;  // by concept, and the end
};

// Catalogs mix listings of several markets, so what was selected before is kept. Not thread-safe.
class RuleSelections {
public:
    explicit RuleSelections(const BookData& book) : book_(book) {}

    // Lives until the next call.
    const RuleSelection& of(std::span<const std::string> markets, std::string_view on);

private:
    const BookData& book_;
    std::vector<RuleSelection> kept_;
    std::size_t last_ = 0;  // the one given last
};

}  // namespace grainside::rules

#endif  // GRAINSIDE_RULES_RULE_SELECTION_H
