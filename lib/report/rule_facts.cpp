#include "report/rule_facts.h"

#include <algorithm>
#include <iterator>
#include <span>

#include "rules/book_data.h"
#include "rules/references.h"

namespace grainside::report {
namespace {

struct TemplateValue {
    std::string_view name, meaning;
};
constexpr TemplateValue kValues[] = {{"says", "(what the words say)"},
                                     {"called", "(the borrowed noun)"},
                                     {"other", "(what the other statement says)"},
                                     {"part", "(the part)"},
                                     {"words", "(the words)"},
                                     {"place", "(the country)"},
                                     {"share", "(the percentage)"},
                                     {"bare", "(the words without praise)"}};

}  // namespace

std::string markets_text(const RuleInfo& rule) {
    if (rule.markets.empty()) return "all";
    std::string text;
    for (const std::string& market : rule.markets) text += (text.empty() ? "" : ", ") + market;
    return text;
}

std::string days_text(const RuleInfo& rule) {
    if (rule.from.empty() && rule.until.empty()) return "always";
    std::string text = rule.from.empty() ? "" : "from " + rule.from;
    if (!rule.until.empty()) text += (text.empty() ? "until " : " until ") + rule.until;
    return text;
}

std::string_view standing_of(const SourceInfo& source) {
    if (source.from_memory) return "from memory";
    return source.practice ? "practice" : "seen";
}

std::string cite_of(const SourceInfo& source) {
    return source.cite + (source.from_memory ? " (from memory)" : "");
}

std::vector<std::string> cites_of(const RuleBook& book, const RuleInfo& rule) {
    std::vector<std::string> cites;
    for (const std::uint32_t index : rule.sources) {
        std::string cite = cite_of(book.sources()[index]);
        if (std::find(cites.begin(), cites.end(), cite) == cites.end()) cites.push_back(std::move(cite));
    }
    return cites;
}

std::string readable_template(std::string_view wording) {
    std::string text;
    while (!wording.empty()) {
        const std::size_t open = wording.find('{');
        const std::size_t close = open == std::string_view::npos ? open : wording.find('}', open);
        if (close == std::string_view::npos) break;
        text += wording.substr(0, open);
        const std::string_view name = wording.substr(open + 1, close - open - 1);
        const auto* value = std::find_if(std::begin(kValues), std::end(kValues),
                                         [&](const TemplateValue& one) { return one.name == name; });
        text += value == std::end(kValues) ? wording.substr(open, close - open + 1) : value->meaning;
        wording.remove_prefix(close + 1);
    }
    return text.append(wording);
}

bool is_made_for(const RuleBook& book, const std::vector<std::string>& named, const std::string& market) {
    if (named.empty()) return false;
    const std::vector<std::string_view> reach = rules::reach_of(std::span(&market, 1), book.data().markets);
    return rules::holds_in(named, reach);
}

bool is_made_for_any(const RuleBook& book, const std::vector<std::string>& named,
                     const std::vector<std::string>& markets) {
    return markets.empty() || std::any_of(markets.begin(), markets.end(),
                                          [&](const std::string& market) { return is_made_for(book, named, market); });
}

std::vector<RuleGroup> rule_groups(const RuleBook& book) {
    std::map<std::string_view, std::vector<const RuleInfo*>> by_name;
    for (const RuleInfo& rule : book.rules()) by_name[rule.group].push_back(&rule);
    std::vector<RuleGroup> groups;
    groups.reserve(by_name.size());
    for (auto& [name, rules] : by_name) groups.push_back({name, std::move(rules)});
    return groups;
}

RuleFamilies::RuleFamilies(const RuleBook& book) {
    for (const RuleInfo& rule : book.rules()) by_model_[rule.like.empty() ? rule.id : rule.like].push_back(&rule);
}

std::vector<const RuleInfo*> RuleFamilies::twins_of(const RuleInfo& rule) const {
    const auto family = by_model_.find(rule.like.empty() ? rule.id : rule.like);
    std::vector<const RuleInfo*> twins;
    if (family == by_model_.end()) return twins;
    std::copy_if(family->second.begin(), family->second.end(), std::back_inserter(twins),
                 [&](const RuleInfo* other) { return other != &rule; });
    return twins;
}

}  // namespace grainside::report
