#include "report/source_uses.h"

#include <algorithm>
#include <cstdint>

#include "document/document.h"
#include "report/rule_facts.h"
#include "report/view_text.h"
#include "rules/book_data.h"

namespace grainside::report {
namespace {

template <typename Entry>
void add_uses(const std::vector<Entry>& entries, std::vector<const Entry*> SourceUses::*kind,
              std::vector<SourceUses>& uses) {
    for (const Entry& entry : entries) {
        for (const std::uint32_t source : entry.sources) (uses[source].*kind).push_back(&entry);
    }
}

// Demands and costs have no id that one could look up, so they are counted where they stand.
void count_entries(const RuleBook& book, std::string_view place, std::size_t SourceUses::*kind,
                   std::vector<SourceUses>& uses) {
    const auto sources = book.sources();
    const auto count = [&](std::string_view id) {
        const auto found =
            std::find_if(sources.begin(), sources.end(), [id](const SourceInfo& source) { return source.id == id; });
        if (found != sources.end()) ++(uses[static_cast<std::size_t>(found - sources.begin())].*kind);
    };
    for (const document::Document& document : book.data().documents) {
        if (!document.file().starts_with(place)) continue;
        for (const document::Node entry : document.root()) {
            const document::Node cited = entry.find("sources");
            if (cited.is_scalar()) count(cited.text());
            for (const document::Node one : cited) count(one.text());
        }
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
    count_entries(book, "demands.yaml", &SourceUses::demands, uses);
    count_entries(book, "costs/", &SourceUses::costs, uses);
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
    append_count(text, uses.demands, "demand", "demands");
    append_count(text, uses.costs, "cost", "costs");
    return text.empty() ? "nothing cites it" : text;
}

}  // namespace grainside::report
