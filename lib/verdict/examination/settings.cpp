#include "verdict/examination/settings.h"

#include <map>
#include <string_view>
#include <utility>

#include "rules/references.h"

namespace grainside::verdict {

namespace {

// A day out of each span between two changes, and how the span is named. Days are texts that sort as days do: what is
// needed of the day behind an `until` is only that it sorts behind it and before the next one.
std::map<std::string, std::string> days_that_differ(const rules::BookData& book) {
    std::map<std::string, std::string> days = {{"0000", ""}};
    for (const RuleInfo& rule : book.rules) {
        if (!rule.from.empty()) days.emplace(rule.from, "since " + rule.from);
        if (!rule.until.empty()) days.emplace(rule.until + '+', "after " + rule.until);
    }
    return days;
}

}  // namespace

std::vector<MarketSetting> settings_of(const rules::BookData& book) {
    const std::map<std::string, std::string> days = days_that_differ(book);
    std::vector<MarketSetting> settings(1);
    for (const rules::Market& market : book.markets) settings.push_back({market.name, {}, {}});
    for (MarketSetting& setting : settings) {
        std::vector<std::string> asked;
        if (!setting.market.empty()) asked.push_back(setting.market);
        const std::vector<std::string_view> reach = rules::reach_of(asked, book.markets);
        setting.last_span.assign(book.rules.size(), kNever);
        for (const auto& [day, name] : days) {
            Span span{name, std::vector<char>(book.rules.size())};
            for (std::size_t i = 0; i < book.rules.size(); ++i) {
                const RuleInfo& rule = book.rules[i];
                const bool here = rules::holds_in(rule.markets, reach);
                span.in_force[i] = here && rules::InForce{rule.from, rule.until}.on(day) ? 1 : 0;
            }
            const bool changes = setting.spans.empty() || setting.spans.back().in_force != span.in_force;
            if (changes) setting.spans.push_back(std::move(span));
        }
        for (std::uint32_t i = 0; i < setting.spans.size(); ++i) {
            for (std::size_t rule = 0; rule < book.rules.size(); ++rule) {
                if (setting.spans[i].in_force[rule] != 0) setting.last_span[rule] = i;
            }
        }
    }
    return settings;
}

}  // namespace grainside::verdict
