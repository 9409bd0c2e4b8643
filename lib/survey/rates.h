// From counts to the rates of a survey, with their limits. Thread-safe.
#ifndef GRAINSIDE_SURVEY_RATES_H
#define GRAINSIDE_SURVEY_RATES_H

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "grainside/survey.h"
#include "survey/group_counts.h"

namespace grainside::survey {

SurveyRate rate_of(std::uint64_t count, std::uint64_t of, const SurveyOptions& options);

// By grade, of `of` things of which `by_worst` have that worst grade: how many have it or a worse one.
std::array<SurveyRate, kSurveyedGrades> rates_of(const std::array<std::uint64_t, 6>& by_worst, std::uint64_t of,
                                                 const SurveyOptions& options);

SurveyGroup group_of(std::string name, const GroupCounts& counts, const SurveyOptions& options);

// The rules of a group, the most frequent first, then in the order of the book.
std::vector<SurveyRuleCount> rules_of(const GroupCounts& counts, const SurveyOptions& options);

// Holds each group against all other listings. REQUIRES: no listing is in two of them, and all are in `all`.
void compare_with_others(std::vector<SurveyGroup>& groups, const SurveyGroup& all, const SurveyOptions& options);

// By the lower limit, the rate, the name.
void put_in_order(std::vector<SurveyGroup>& groups, const SurveyOptions& options);
bool is_before(const SurveyRate& one, const SurveyRate& other) noexcept;

}  // namespace grainside::survey

#endif  // GRAINSIDE_SURVEY_RATES_H
