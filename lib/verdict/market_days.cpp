#include "verdict/market_days.h"

#include <fmt/format.h>

#include <charconv>
#include <chrono>
#include <set>
#include <span>

#include "rules/references.h"

namespace grainside::verdict {
namespace {

RuleSelection selection(const rules::BookData& book, const std::vector<std::string_view>& reach, std::string_view day) {
    RuleSelection rules(book.rules.size());
    for (std::size_t i = 0; i < rules.size(); ++i) {
        const RuleInfo& rule = book.rules[i];
        rules[i] = rules::holds_in(rule.markets, reach) && rules::InForce{rule.from, rule.until}.on(day);
    }
    return rules;
}

int number_at(std::string_view text, std::size_t at, std::size_t length) {
    int number = 0;
    std::from_chars(text.data() + at, text.data() + at + length, number);
    return number;
}

}  // namespace

std::string next_day(std::string_view day) {
    constexpr std::size_t kLength = 10;
    constexpr int kLastYear = 9999;
    if (day.size() != kLength) return {};
    const std::chrono::year_month_day date{std::chrono::year(number_at(day, 0, 4)),
                                           std::chrono::month(static_cast<unsigned>(number_at(day, 5, 2))),
                                           std::chrono::day(static_cast<unsigned>(number_at(day, 8, 2)))};
    if (!date.ok()) return {};
    const std::chrono::year_month_day next(std::chrono::sys_days(date) + std::chrono::days(1));
    if (static_cast<int>(next.year()) > kLastYear) return {};
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(next.year()), static_cast<unsigned>(next.month()),
                       static_cast<unsigned>(next.day()));
}

MarketDays market_days(const rules::BookData& book, const std::string& market, const std::string& on,
                       std::size_t most_later) {
    const std::vector<std::string_view> reach = rules::reach_of(std::span(&market, 1), book.markets);
    MarketDays found;
    found.days.push_back({on, selection(book, reach, on)});
    if (on.empty()) return found;
    std::set<std::string> later;
    for (const RuleInfo& rule : book.rules) {
        if (!rules::holds_in(rule.markets, reach)) continue;
        if (rule.from > on) later.insert(rule.from);
        if (rule.until.empty() || rule.until < on) continue;
        if (std::string ended = next_day(rule.until); !ended.empty()) later.insert(std::move(ended));
    }
    for (const std::string& day : later) {
        RuleSelection rules = selection(book, reach, day);
        if (rules == found.days.back().rules) continue;
        if (found.days.size() > most_later) {
            found.more = true;
            break;
        }
        found.days.push_back({day, std::move(rules)});
    }
    return found;
}

}  // namespace grainside::verdict
