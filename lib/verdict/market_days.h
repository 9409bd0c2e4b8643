// On which days other rules begin to apply in a market. Thread-safe.
#ifndef GRAINSIDE_VERDICT_MARKET_DAYS_H
#define GRAINSIDE_VERDICT_MARKET_DAYS_H

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "rules/book_data.h"

namespace grainside::verdict {

// One flag a rule of the book: whether it applies.
using RuleSelection = std::vector<bool>;

struct MarketDay {
    std::string day;  // from which on, YYYY-MM-DD
    RuleSelection rules;
};

struct MarketDays {
    std::vector<MarketDay> days;  // the first is the day asked for; neighbours differ in their rules
    bool more = false;            // later ones were left out
};

// `on` and at most `most_later` days behind it; an empty `on` gives one day without a date, of rules whatever theirs.
MarketDays market_days(const rules::BookData& book, const std::string& market, const std::string& on,
                       std::size_t most_later);

// The day after `day`; empty for one that is no day of the calendar, or the last of year 9999.
std::string next_day(std::string_view day);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_MARKET_DAYS_H
