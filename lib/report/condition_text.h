// The condition of a rule in words, made from the keys that its file has, so that those who do not read YAML can say
// what it flags and where it keeps silent. Words of the grammar ('faux', 'imitation') are those of the book.
#ifndef GRAINSIDE_REPORT_CONDITION_TEXT_H
#define GRAINSIDE_REPORT_CONDITION_TEXT_H

#include <string>
#include <string_view>
#include <vector>

#include "grainside/rule_book.h"
#include "report/mark_text.h"

namespace grainside::report {

// One step of a condition, such as {"It flags", {"a material claim that says leather or a kind of it"}}. Of several
// items one suffices.
struct ConditionStep {
    std::string_view lead;
    std::vector<std::string> items;
};

// Immutable once made; any number of threads may use one. The book must outlive it.
class ConditionTexts {
public:
    explicit ConditionTexts(const RuleBook& book) : book_(book), marks_(book.data()) {}

    // In the order of reading: what is flagged, what must stand beside it, where the rule keeps silent. A rule that is
    // like another one has the steps of both. REQUIRES: `rule` is an element of book.rules().
    std::vector<ConditionStep> steps_of(const RuleInfo& rule) const;

private:
    const RuleBook& book_;
    MarkTexts marks_;
};

// "in the same phrase, " of `phrase`; empty for a reach that nobody told.
std::string_view reach_text(std::string_view reach) noexcept;

// A step as one sentence: its lead, and the items with "; or " between them.
std::string sentence_of(const ConditionStep& step);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_CONDITION_TEXT_H
