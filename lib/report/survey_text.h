// What the forms of a survey say alike. Not inert: each writer escapes what it writes. Thread-safe.
#ifndef GRAINSIDE_REPORT_SURVEY_TEXT_H
#define GRAINSIDE_REPORT_SURVEY_TEXT_H

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/survey_report.h"

namespace grainside::report {

// "25.8 %"
std::string percent_of(double share);
// "20.7 to 31.7 %"
std::string limits_of(const SurveyRate& rate);
// "7", "about 340"
std::string distinct_text(const SurveyDistinct& number);

// "misleading or worse"; of the worst grade only itself, of the mildest "any".
std::string grade_or_worse(Grade grade);
// "listings with a finding of grade misleading or worse", "listings with any finding"
std::string what_is_counted(Grade grade);

// SurveyOptions::at as an index of SurveyGroup::rates.
std::size_t asked_grade(const Survey& survey);
// The grades to show, worst first: the three that a check of words gives, and others where a rule of the book gives
// them.
std::vector<Grade> shown_grades(const Survey& survey);

// "not stated" where there is no name.
std::string group_name(const SurveyGroup& group, std::string_view nameless = "not stated");
// "above", "below", "alike", "-"
std::string_view name_of_standing(SurveyStanding standing) noexcept;

// "240 listings of 6 sellers; 131 with findings"
std::string extent_text(const Survey& survey);
// "Checked for us, eu, by the rules in force on 2026-11-26."
std::string asked_text(const SurveyContext& context);

// "Ondemar: 53 more listings": groups whose limits are further apart than asked for.
struct FurtherListings {
    std::string name;
    std::uint64_t further = 0;
};
std::vector<FurtherListings> further_listings(const Survey& survey);
// What stands above them.
std::string further_text(const Survey& survey);

// What is not told apart; empty where everything is.
std::vector<std::string> left_together(const Survey& survey);

// How to read rates, limits and comparisons; one paragraph each.
std::vector<std::string> survey_notes(const Survey& survey);

// "2 misleading, 1 vague"
std::string findings_by_grade(const SurveyListing& listing);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_SURVEY_TEXT_H
