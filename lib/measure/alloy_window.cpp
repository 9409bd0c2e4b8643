#include "measure/alloy_window.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>

#include "measure/conformity.h"
#include "measure/usable.h"

namespace grainside::measure {
namespace {

constexpr double kWhole = 100;

bool holds(const std::vector<std::string>& symbols, std::string_view symbol) {
    return std::find(symbols.begin(), symbols.end(), symbol) != symbols.end();
}

template <typename Named>
bool names_twice(const std::vector<Named>& list) {
    for (std::size_t i = 0; i < list.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            if (list[i].symbol == list[j].symbol) return true;
        }
    }
    return false;
}

Range widened(const ElementRange& element) {
    return {.low = std::max(0.0, element.low - element.tolerance),
            .high = std::min(kWhole, element.high + element.tolerance)};
}

bool is_sound(const AlloyWindow& window) {
    const auto is_range = [](const ElementRange& each) {
        return each.low >= 0 && each.low <= each.high && each.high <= kWhole && each.tolerance >= 0 &&
               std::isfinite(each.tolerance);
    };
    const auto is_balance = [&](const ElementRange& each) { return each.symbol == window.balance; };
    return std::all_of(window.elements.begin(), window.elements.end(), is_range) && !names_twice(window.elements) &&
           window.trace_limit >= 0 && window.trace_limit <= kWhole &&
           (window.balance.empty() || std::none_of(window.elements.begin(), window.elements.end(), is_balance));
}

// Without its lower bound where that is 0: a concentration has no other side to fall out on.
Range allowed(const Range& range) {
    if (range.low > 0) return range;
    return {.low = -std::numeric_limits<double>::infinity(), .high = range.high};
}

Limit limit_of(const Range& range) {
    Limit limit{.lower = std::nullopt, .upper = range.high};
    if (range.low > 0) limit.lower = range.low;
    return limit;
}

// The reading that lies best in the range: its middle, and none at all where only an upper limit counts.
double best_place(const Range& range) {
    return range.low > 0 ? range.low + (range.high - range.low) / 2 : 0;
}

// 0 at best. A range without width has no probability to compare, but a distance from it.
double fit_of(const Measured& value, const Range& range) {
    if (range.low > 0 && range.low == range.high) {
        if (value.u == 0) return value.value == range.low ? 0 : -std::numeric_limits<double>::infinity();
        const double z = (value.value - range.low) / value.u;
        return -0.5 * z * z;
    }
    const std::optional<double> found = log_probability(value, allowed(range));
    const Measured best{.value = best_place(range), .u = value.u, .dof = value.dof};
    const std::optional<double> at_best = log_probability(best, allowed(range));
    if (!found || !at_best || std::isinf(*at_best)) return -std::numeric_limits<double>::infinity();
    return std::min(0.0, *found - *at_best);
}

// What the window wants of one element.
struct Expected {
    ElementRole role = ElementRole::trace;
    Range range;
};

Expected expected_of(const AlloyWindow& window, const std::optional<Range>& balance, std::string_view symbol) {
    if (balance && symbol == window.balance) return {.role = ElementRole::balance, .range = *balance};
    for (const ElementRange& each : window.elements) {
        if (each.symbol == symbol) return {.role = ElementRole::listed, .range = widened(each)};
    }
    return {.role = ElementRole::trace, .range = {.low = 0, .high = window.trace_limit}};
}

}  // namespace

std::optional<Range> balance_range(const AlloyWindow& window, const std::vector<std::string>& unseen) {
    if (window.balance.empty() || !is_sound(window)) return std::nullopt;
    double least_taken = 0;
    double least_seen = 0;
    double most_taken = window.trace_limit;
    for (const ElementRange& each : window.elements) {
        const Range range = widened(each);
        least_taken += range.low;
        most_taken += range.high;
        if (!holds(unseen, each.symbol)) least_seen += range.low;
    }
    if (least_taken > kWhole) return std::nullopt;
    return Range{.low = std::max(0.0, kWhole - most_taken), .high = kWhole - least_seen};
}

std::optional<WindowFit> fit_window(const AlloyWindow& window, const std::vector<ElementReading>& readings,
                                    const std::vector<std::string>& unseen) {
    const std::optional<Range> balance = balance_range(window, unseen);
    if (!is_sound(window) || (!window.balance.empty() && !balance) || names_twice(readings)) return std::nullopt;
    WindowFit fit;
    for (const ElementReading& reading : readings) {
        if (!is_usable(reading.percent)) return std::nullopt;
        if (holds(unseen, reading.symbol)) continue;
        const Expected expected = expected_of(window, balance, reading.symbol);
        const std::optional<double> likelihood = log_likelihood(reading.percent, expected.range);
        if (!likelihood) return std::nullopt;
        fit.elements.push_back({.symbol = reading.symbol,
                                .role = expected.role,
                                .range = expected.range,
                                .log_likelihood = *likelihood,
                                .probability = conformity_probability(reading.percent, limit_of(expected.range)),
                                .log_fit = fit_of(reading.percent, expected.range)});
        fit.log_likelihood += *likelihood;
        const std::size_t last = fit.elements.size() - 1;
        const double worst_so_far = fit.worst ? fit.elements[*fit.worst].log_fit : 0;
        if (fit.elements[last].log_fit < worst_so_far) fit.worst = last;
    }
    return fit;
}

}  // namespace grainside::measure
