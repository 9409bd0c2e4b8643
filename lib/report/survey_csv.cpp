// write_survey_csv: a survey as one table.
#include <fmt/format.h>

#include <string>
#include <string_view>
#include <vector>

#include "grainside/survey_report.h"
#include "report/csv_text.h"
#include "report/rounded.h"
#include "report/survey_text.h"

namespace grainside {
inline namespace v0 {
namespace {

class SurveyTable {
public:
    SurveyTable(const SurveyContext& context, std::string& out)
        : context_(context), survey_(context.survey), out_(out) {}

    void write() {
        report::append_csv_record(out_, {"kind", "group", "measure", "count", "of", "rate", "low", "high"});
        const SurveyShown& shown = context_.shown;
        row("survey", "", "rules in force on", context_.on.empty() ? "any day" : context_.on);
        row("survey", "", "rule book", std::string(context_.book.digest()));
        row("survey", "", "limits, percent", fmt::format("{:g}", 100 * survey_.options.confidence));
        row("survey", "", "note", std::string(kCsvNote));
        count("survey", "", "claims", survey_.all.claims);
        count("survey", "", "errors while reading", survey_.reading_errors);
        count("survey", "", "sellers", survey_.different_sellers.count);
        count("survey", "", "different wordings", survey_.different_wordings.count);
        if (shown.grades) write_group("all", survey_.all, "all listings");
        if (shown.sellers) write_groups("seller", survey_.sellers, "not stated");
        if (shown.parts) {
            for (const SurveyPart& part : survey_.parts) write_rates("part", name_of(part.part), part.rates, "claims");
        }
        if (shown.categories) write_groups("category", survey_.categories, "not known");
        if (shown.markets) write_groups("market", survey_.markets, "none stated");
        if (shown.rules) {
            for (const SurveyRule& rule : survey_.rules) {
                rate("rule", rule_id(rule.count.rule), "listings flagged", rule.count.listings);
                count("rule", rule_id(rule.count.rule), "sellers flagged", rule.sellers);
            }
        }
        for (const SurveyListing& listing : survey_.worst) {
            count("worst listing", listing.id, report::findings_by_grade(listing), listing.findings);
        }
        for (const SurveyWording& wording : survey_.wordings) {
            count("wording", wording.words, fmt::format("listings flagged by {}", rule_id(wording.rule)),
                  wording.listings);
            count("wording", wording.words, fmt::format("sellers flagged by {}", rule_id(wording.rule)),
                  wording.sellers.count);
        }
    }

private:
    static constexpr std::string_view kCsvNote =
        "Rates are of wording, not of products or intent. This is not legal advice; local law and licensed practice "
        "decide.";

    std::string_view rule_id(std::uint32_t rule) const { return context_.book.rules()[rule].id; }

    void row(std::string_view kind, std::string_view group, std::string_view measure, std::string count_cell) {
        report::append_csv_record(
            out_, {std::string(kind), std::string(group), std::string(measure), std::move(count_cell), "", "", "", ""});
    }
    void count(std::string_view kind, std::string_view group, std::string_view measure, std::uint64_t number) {
        row(kind, group, measure, std::to_string(number));
    }
    void rate(std::string_view kind, std::string_view group, std::string_view measure, const SurveyRate& rate) {
        report::append_csv_record(
            out_, {std::string(kind), std::string(group), std::string(measure), std::to_string(rate.count),
                   std::to_string(rate.of), fmt::format("{:g}", report::rounded(rate.rate)),
                   fmt::format("{:g}", report::rounded(rate.low)), fmt::format("{:g}", report::rounded(rate.high))});
    }
    void write_rates(std::string_view kind, std::string_view group,
                     const std::array<SurveyRate, kSurveyedGrades>& rates, std::string_view what) {
        for (const Grade grade : report::shown_grades(survey_)) {
            rate(kind, group, fmt::format("{} flagged, {}", what, report::grade_or_worse(grade)),
                 rates[static_cast<std::size_t>(grade)]);
        }
    }

    void write_group(std::string_view kind, const SurveyGroup& group, std::string_view nameless) {
        const std::string name = report::group_name(group, nameless);
        count(kind, name, "listings", group.listings);
        count(kind, name, "findings", group.findings);
        count(kind, name, "different wordings", group.wordings.count);
        write_rates(kind, name, group.rates, "listings");
        // Without the limits of the difference: a spreadsheet takes a cell that begins with a minus sign for a formula.
        if (group.standing != SurveyStanding::not_compared) {
            row(kind, name, "compared with all others", std::string(report::name_of_standing(group.standing)));
        }
        count(kind, name, "further listings needed", group.further);
        if (!context_.shown.rules) return;
        for (const SurveyRuleCount& rule : group.rules) {
            rate(kind, name, fmt::format("listings flagged by {}", rule_id(rule.rule)), rule.listings);
        }
    }
    void write_groups(std::string_view kind, const std::vector<SurveyGroup>& groups, std::string_view nameless) {
        for (const SurveyGroup& group : groups) write_group(kind, group, nameless);
    }

    const SurveyContext& context_;
    const Survey& survey_;
    std::string& out_;
};

}  // namespace

void write_survey_csv(const SurveyContext& context, std::string& out) {
    SurveyTable(context, out).write();
}

}  // namespace v0
}  // namespace grainside
