#include "report/money_text.h"

#include <fmt/format.h>

#include <algorithm>

namespace grainside::report {

MoneyStyle style_of(std::string_view currency, const evidence::CostBook& book) {
    MoneyStyle style{std::string(currency), 2};
    const auto known = std::find_if(book.currencies.begin(), book.currencies.end(),
                                    [&](const evidence::Currency& one) { return one.id == currency; });
    if (known != book.currencies.end()) style.digits = known->digits;
    return style;
}

std::string money_text(const MoneyStyle& style, double value) {
    return fmt::format("{:.{}f}", value, style.digits);
}

std::string range_text(const MoneyStyle& style, const CostAmount& amount) {
    return money_text(style, amount.low) + " to " + money_text(style, amount.high);
}

std::string spread_text(const MoneyStyle& style, const CostAmount& amount) {
    std::string text = money_text(style, amount.value) + ' ' + style.currency;
    if (amount.u > 0) text += " (" + range_text(style, amount) + ')';
    return text;
}

std::string multiple_text(const PriceMultiple& multiple) {
    const CostAmount& times = multiple.multiple;
    std::string text = fmt::format("{}{:.2f}", multiple.floor_only ? "at most " : "", times.value);
    if (times.u > 0) text += fmt::format(" ({:.2f} to {:.2f})", times.low, times.high);
    return text;
}

}  // namespace grainside::report
