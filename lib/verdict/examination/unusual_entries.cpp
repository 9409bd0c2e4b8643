#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "verdict/examination/findings.h"
#include "verdict/examination/proof_texts.h"

namespace grainside::verdict {

namespace {

using Severity = Issue::Severity;

// Rules that share a condition; a rule without model is its own family.
std::uint32_t family_of(std::span<const std::uint32_t> models, std::uint32_t rule) {
    return models[rule] == kNoModel ? rule : models[rule];
}

void find_same_texts(const rules::BookData& book, std::span<const std::uint32_t> models, const char* code,
                     std::string_view key, const std::string RuleInfo::*text, Remarks& remarks) {
    std::map<std::string_view, std::vector<std::uint32_t>> by_text;
    for (std::uint32_t i = 0; i < book.rules.size(); ++i) {
        const RuleInfo& rule = book.rules[i];
        std::vector<std::uint32_t>& others = by_text[rule.*text];
        const bool of_kin = std::any_of(others.begin(), others.end(), [&](std::uint32_t other) {
            return family_of(models, other) == family_of(models, i);
        });
        if (!others.empty() && !of_kin) {
            const RuleInfo& other = book.rules[others.front()];
            remarks.add(Severity::note, code, rule,
                        fmt::format("rule '{}' has the same `{}` as '{}' ({}:{})", rule.id, key, other.id, other.file,
                                    other.line),
                        "say what sets this rule apart, or let it be `like` the other", other.id);
        }
        if (!of_kin) others.push_back(i);
    }
}

}  // namespace

void find_unusual_entries(const rules::BookData& book, std::span<const std::uint32_t> models, Remarks& remarks) {
    for (const RuleInfo& rule : book.rules) {
        if (rule.markets.empty()) continue;
        if (rule.file.starts_with("markets/") && rule.from.empty() && rule.until.empty()) {
            remarks.add(Severity::note, "no-date", rule,
                        fmt::format("rule '{}' of one market has no day from which it is in force", rule.id),
                        "add `in_force: {from: YYYY-MM-DD}` of the law, where it has one");
        }
        const bool memory = !rule.sources.empty() &&
                            std::all_of(rule.sources.begin(), rule.sources.end(),
                                        [&](std::uint32_t source) { return book.sources[source].from_memory; });
        if (memory) {
            remarks.add(Severity::note, "from-memory", rule,
                        fmt::format("rule '{}' of one market stands on sources whose text nobody has seen", rule.id),
                        "read the text and set `how: seen`, or let the finding go on saying so");
        }
    }
    find_same_texts(book, models, "same-title", "title", &RuleInfo::title, remarks);
    find_same_texts(book, models, "same-because", "because", &RuleInfo::because, remarks);
}

}  // namespace grainside::verdict
