// What the counts of a survey come to, in order.
#include <algorithm>
#include <tuple>
#include <utility>

#include "survey/rates.h"
#include "survey/survey_counts.h"

namespace grainside {
inline namespace v0 {

using survey::FlaggedWords;
using survey::GroupCounts;

void SurveyTally::Counts::list_parts(Survey& survey) const {
    for (std::size_t at = 0; at < parts.size(); ++at) {
        if (parts[at].claims == 0) continue;
        survey.parts.push_back(
            {static_cast<Part>(at), parts[at].claims, survey::rates_of(parts[at].by_worst, parts[at].claims, options)});
    }
    const std::size_t grade = static_cast<std::size_t>(options.at);
    std::stable_sort(survey.parts.begin(), survey.parts.end(), [grade](const SurveyPart& a, const SurveyPart& b) {
        return survey::is_before(a.rates[grade], b.rates[grade]);
    });
}

void SurveyTally::Counts::list_rules(Survey& survey) const {
    for (const SurveyRuleCount& count : survey::rules_of(all, options)) survey.rules.push_back({count, 0});
    for (SurveyRule& rule : survey.rules) {
        for (const auto& [key, seller] : sellers.entries()) {
            const bool flagged = std::binary_search(seller.rules.begin(), seller.rules.end(),
                                                    std::pair(rule.count.rule, std::uint64_t{0}),
                                                    [](const auto& a, const auto& b) { return a.first < b.first; });
            if (flagged) ++rule.sellers;
        }
    }
}

void SurveyTally::Counts::list_wordings(Survey& survey) const {
    std::vector<const FlaggedWords*> list;
    list.reserve(wordings.entries().size());
    for (const auto& [key, wording] : wordings.entries()) list.push_back(&wording);
    const std::size_t shown = std::min({options.top, kMostListed, list.size()});
    std::partial_sort(list.begin(), list.begin() + static_cast<std::ptrdiff_t>(shown), list.end(),
                      [](const FlaggedWords* a, const FlaggedWords* b) {
                          if (a->listings != b->listings) return a->listings > b->listings;
                          return std::tie(a->spelling, a->rule) < std::tie(b->spelling, b->rule);
                      });
    for (std::size_t at = 0; at < shown; ++at) {
        const FlaggedWords& one = *list[at];
        survey.wordings.push_back({one.spelling, one.rule, one.grade, one.listings, one.sellers.value(),
                                   one.place.listing, one.place.field, one.place.say_instead});
    }
    survey.different_wordings = wordings.different();
}

void SurveyTally::Counts::list_sellers(Survey& survey) const {
    const auto list = [&](const GroupCounts& counts, const std::string& name) {
        survey.sellers.push_back(survey::group_of(name, counts, options));
        survey.sellers.back().rules = survey::rules_of(counts, options);
    };
    std::uint64_t told_apart = no_seller.listings;
    for (const auto& [key, counts] : sellers.entries()) {
        list(counts, counts.spelling);
        told_apart += counts.listings;
    }
    if (no_seller.listings != 0) list(no_seller, {});
    survey.listings_of_others = all.listings - told_apart;
    survey.different_sellers = sellers.different();
}

Survey SurveyTally::Counts::survey() const {
    Survey survey;
    survey.options = options;
    survey.all = survey::group_of({}, all, options);
    list_sellers(survey);
    for (const auto& [key, counts] : markets.entries()) {
        survey.markets.push_back(survey::group_of(counts.spelling, counts, options));
    }
    for (std::size_t at = 0; at < categories.size(); ++at) {
        if (categories[at].listings == 0) continue;
        // The first stands for none.
        std::string name = at == 0 ? std::string() : book.data().vocabulary.categories[at].name;
        survey.categories.push_back(survey::group_of(std::move(name), categories[at], options));
    }
    survey::compare_with_others(survey.sellers, survey.all, options);
    survey::compare_with_others(survey.categories, survey.all, options);
    for (auto* groups : {&survey.sellers, &survey.categories, &survey.markets}) survey::put_in_order(*groups, options);
    list_parts(survey);
    list_rules(survey);
    list_wordings(survey);
    survey.worst = worst.list();
    return survey;
}

}  // namespace v0
}  // namespace grainside
