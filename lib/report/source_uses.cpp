#include "report/source_uses.h"

#include <algorithm>
#include <cstdint>

#include "report/rule_facts.h"
#include "report/view_text.h"

namespace grainside::report {
namespace {

template <typename Entry>
void add_uses(const std::vector<Entry>& entries, std::vector<const Entry*> SourceUses::*kind,
              std::vector<SourceUses>& uses) {
    for (const Entry& entry : entries) {
        for (const std::uint32_t source : entry.sources) (uses[source].*kind).push_back(&entry);
    }
}

void append_count(std::string& text, std::size_t count, std::string_view one, std::string_view several) {
    if (count == 0) return;
    text += (text.empty() ? "" : ", ") + counted(count, one, several);
}

}  // namespace

std::vector<SourceUses> uses_of_sources(const RuleBook& book, const EvidenceBook* evidence) {
    std::vector<SourceUses> uses(book.sources().size());
    for (const RuleInfo& rule : book.rules()) {
        for (const std::uint32_t source : rule.sources) uses[source].rules.push_back(&rule);
    }
    if (evidence == nullptr) return uses;
    add_uses(evidence->data().limits, &SourceUses::limits, uses);
    add_uses(evidence->data().methods, &SourceUses::methods, uses);
    add_uses(evidence->data().alloys, &SourceUses::alloys, uses);
    return uses;
}

bool is_cited_for(const RuleBook& book, const SourceUses& uses, const std::vector<std::string>& markets) {
    const auto made_for = [&](const auto* entry) { return is_made_for_any(book, entry->markets, markets); };
    return markets.empty() || std::any_of(uses.rules.begin(), uses.rules.end(), made_for) ||
           std::any_of(uses.limits.begin(), uses.limits.end(), made_for);
}

std::string counts_text(const SourceUses& uses) {
    std::string text;
    append_count(text, uses.rules.size(), "rule", "rules");
    append_count(text, uses.limits.size(), "limit", "limits");
    append_count(text, uses.methods.size(), "method", "methods");
    append_count(text, uses.alloys.size(), "alloy", "alloys");
    return text.empty() ? "nothing cites it" : text;
}

}  // namespace grainside::report
