#include "report/survey_text.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

#include "report/fixed_texts.h"
#include "report/view_text.h"

namespace grainside::report {
namespace {

constexpr std::string_view kOfWording =
    "A rate counts wording: how many listings carry words that a rule of the book flags. It says nothing of the "
    "products, nor of what a seller meant.";
constexpr std::string_view kCensusNote =
    "Where these are all the listings that were on offer, nothing was sampled: the rates are what they are, and the "
    "limits do not apply.";
constexpr char kLimitsNote[] =
    "Limits are Wilson score limits at {:g} %, for listings drawn at random. Listings of one seller that share a "
    "template are not drawn one by one, and then the true limits are wider: look at how few different wordings stand "
    "behind a rate.";
constexpr char kStandingNote[] =
    "'above' and 'below': the limits of the difference to all other listings together (Newcombe, method 10) leave out "
    "zero; 'chance': they do not, so it may be chance. Of {:g} groups that do not differ, about one is marked 'above' "
    "or 'below' by chance alone.";

}  // namespace

std::string percent_of(double share) {
    return fmt::format("{:.1f} %", 100 * share);
}

std::string limits_of(const SurveyRate& rate) {
    return fmt::format("{:.1f} to {:.1f} %", 100 * rate.low, 100 * rate.high);
}

std::string distinct_text(const SurveyDistinct& number) {
    return fmt::format("{}{}", number.estimated ? "about " : "", number.count);
}

std::string grade_or_worse(Grade grade) {
    if (grade == Grade::contradicted) return std::string(name_of(grade));
    if (static_cast<std::size_t>(grade) + 1 >= kSurveyedGrades) return "any";
    return fmt::format("{} or worse", name_of(grade));
}

std::string what_is_counted(Grade grade) {
    const std::string name = grade_or_worse(grade);
    return name == "any" ? "listings with any finding" : fmt::format("listings with a finding of grade {}", name);
}

std::size_t asked_grade(const Survey& survey) {
    return std::min(static_cast<std::size_t>(survey.options.at), kSurveyedGrades - 1);
}

std::vector<Grade> shown_grades(const Survey& survey) {
    std::vector<Grade> grades;
    for (std::size_t at = 0; at < kSurveyedGrades; ++at) {
        const auto grade = static_cast<Grade>(at);
        const bool usual = grade == Grade::misleading || grade == Grade::unsupported || grade == Grade::vague;
        if (usual || at == asked_grade(survey) || survey.all.by_worst[at] != 0) grades.push_back(grade);
    }
    return grades;
}

std::string group_name(const SurveyGroup& group, std::string_view nameless) {
    return group.name.empty() ? std::string(nameless) : group.name;
}

std::string_view name_of_standing(SurveyStanding standing) noexcept {
    switch (standing) {
        case SurveyStanding::above:
            return "above";
        case SurveyStanding::below:
            return "below";
        case SurveyStanding::chance:
            return "chance";
        case SurveyStanding::not_compared:
            break;
    }
    return "-";
}

std::string extent_text(const Survey& survey) {
    const SurveyDistinct& sellers = survey.different_sellers;
    std::string text = counted(survey.all.listings, "listing", "listings");
    if (survey.all.listings == 0 && survey.reading_errors == 0) return text;
    if (sellers.count != 0) {
        text += fmt::format(" of {} {}", distinct_text(sellers), sellers.count == 1 ? "seller" : "sellers");
    }
    std::string unread;
    if (survey.reading_errors != 0) {
        unread = "; " + counted(survey.reading_errors, "error", "errors") +
                 " while reading, and what could not be read is not counted";
    }
    const std::uint64_t clean = survey.all.by_worst[static_cast<std::size_t>(Grade::consistent)];
    return text +
           fmt::format(", {} with findings; {}", survey.all.listings - clean,
                       counted(survey.all.claims, "claim", "claims")) +
           unread;
}

std::string asked_text(const SurveyContext& context) {
    const std::vector<std::string>& markets = context.survey.options.markets;
    std::string text = "Checked for ";
    text += markets.empty() ? "the markets that each listing names" : fmt::format("{}", fmt::join(markets, ", "));
    text += context.on.empty() ? ", whatever the day" : ", by the rules in force on " + context.on;
    return text + '.';
}

std::vector<FurtherListings> further_listings(const Survey& survey) {
    std::vector<FurtherListings> list;
    for (const SurveyGroup& seller : survey.sellers) {
        if (seller.further != 0) list.push_back({group_name(seller), seller.further});
    }
    return list;
}

std::string further_text(const Survey& survey) {
    return fmt::format(
        "To know a rate within {:g} points (half of what lies between its limits), if it stays what it is, so many "
        "more "
        "listings would have to be read",
        100 * survey.options.within);
}

std::vector<std::string> left_together(const Survey& survey) {
    std::vector<std::string> lines;
    if (survey.listings_of_others != 0) {
        lines.push_back(
            fmt::format("Of about {} sellers {} are told apart; {} listings of others count in every other "
                        "table.",
                        survey.different_sellers.count, kMostSellers, survey.listings_of_others));
    }
    if (survey.different_wordings.estimated) {
        lines.push_back(
            fmt::format("Of about {} wordings {} were counted apart, chosen by chance and not by number; "
                        "commoner ones may be missing.",
                        survey.different_wordings.count, kMostWordings));
    }
    return lines;
}

std::vector<std::string> survey_notes(const Survey& survey) {
    const double by_chance = 1 - survey.options.confidence;
    std::vector<std::string> notes{std::string(kOfWording),
                                   std::string(kReadingNote) + " The limits do not cover these errors."};
    notes.push_back(fmt::format(kLimitsNote, 100 * survey.options.confidence));
    notes.emplace_back(kCensusNote);
    notes.push_back(fmt::format(kStandingNote, by_chance > 1e-6 ? std::round(1 / by_chance) : 1e6));
    return notes;
}

std::string findings_by_grade(const SurveyListing& listing) {
    std::string text;
    for (std::size_t grade = 0; grade < listing.by_grade.size(); ++grade) {
        if (listing.by_grade[grade] == 0) continue;
        text += fmt::format("{}{} {}", text.empty() ? "" : ", ", listing.by_grade[grade],
                            name_of(static_cast<Grade>(grade)));
    }
    return text;
}

}  // namespace grainside::report
