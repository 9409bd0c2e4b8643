#include "survey/rates.h"

#include <algorithm>
#include <compare>
#include <cstddef>
#include <utility>

#include "measure/proportion.h"
#include "survey/natural_order.h"

namespace grainside::survey {
namespace {

std::size_t asked_grade(const SurveyOptions& options) {
    return std::min(static_cast<std::size_t>(options.at), kSurveyedGrades - 1);
}

std::uint64_t further_for(const SurveyRate& rate, const SurveyOptions& options) {
    if (rate.of == 0 || (rate.high - rate.low) / 2 <= options.within) return 0;
    const std::uint64_t needed = measure::number_for_half_width(rate.rate, options.within, options.confidence);
    return needed > rate.of ? needed - rate.of : 0;
}

}  // namespace

SurveyRate rate_of(std::uint64_t count, std::uint64_t of, const SurveyOptions& options) {
    SurveyRate rate;
    rate.count = count;
    rate.of = of;
    if (of == 0) return rate;
    const measure::ShareLimits limits = measure::wilson_limits({count, of}, options.confidence);
    rate.rate = static_cast<double>(count) / static_cast<double>(of);
    rate.low = limits.low;
    rate.high = limits.high;
    return rate;
}

std::array<SurveyRate, kSurveyedGrades> rates_of(const std::array<std::uint64_t, 6>& by_worst, std::uint64_t of,
                                                 const SurveyOptions& options) {
    std::array<SurveyRate, kSurveyedGrades> rates;
    std::uint64_t count = 0;
    for (std::size_t grade = 0; grade < kSurveyedGrades; ++grade) {
        count += by_worst[grade];
        rates[grade] = rate_of(count, of, options);
    }
    return rates;
}

std::vector<SurveyRuleCount> rules_of(const GroupCounts& counts, const SurveyOptions& options) {
    std::vector<SurveyRuleCount> rules;
    rules.reserve(counts.rules.size());
    for (const auto& [rule, count] : counts.rules) rules.push_back({rule, rate_of(count, counts.listings, options)});
    std::stable_sort(rules.begin(), rules.end(), [](const SurveyRuleCount& a, const SurveyRuleCount& b) {
        return a.listings.count > b.listings.count;
    });
    return rules;
}

SurveyGroup group_of(std::string name, const GroupCounts& counts, const SurveyOptions& options) {
    SurveyGroup group;
    group.name = std::move(name);
    group.listings = counts.listings;
    group.claims = counts.claims;
    group.findings = counts.findings;
    group.wordings = counts.wordings.value();
    group.by_worst = counts.by_worst;
    group.rates = rates_of(counts.by_worst, counts.listings, options);
    group.further = further_for(group.rates[asked_grade(options)], options);
    return group;
}

void compare_with_others(std::vector<SurveyGroup>& groups, const SurveyGroup& all, const SurveyOptions& options) {
    const SurveyRate& of_all = all.rates[asked_grade(options)];
    for (SurveyGroup& group : groups) {
        const SurveyRate& own = group.rates[asked_grade(options)];
        if (own.of == 0 || own.of == of_all.of) continue;
        const measure::Counted others{of_all.count - own.count, of_all.of - own.of};
        const measure::ShareLimits limits = measure::difference_limits({own.count, own.of}, others, options.confidence);
        group.difference = own.rate - static_cast<double>(others.count) / static_cast<double>(others.of);
        group.difference_low = limits.low;
        group.difference_high = limits.high;
        group.standing = limits.low > 0    ? SurveyStanding::above
                         : limits.high < 0 ? SurveyStanding::below
                                           : SurveyStanding::chance;
    }
}

bool is_before(const SurveyRate& one, const SurveyRate& other) noexcept {
    return one.low != other.low ? one.low > other.low : one.rate > other.rate;
}

void put_in_order(std::vector<SurveyGroup>& groups, const SurveyOptions& options) {
    const std::size_t grade = asked_grade(options);
    std::sort(groups.begin(), groups.end(), [grade](const SurveyGroup& a, const SurveyGroup& b) {
        if (is_before(a.rates[grade], b.rates[grade])) return true;
        return !is_before(b.rates[grade], a.rates[grade]) && std::is_lt(natural_order(a.name, b.name));
    });
}

}  // namespace grainside::survey
