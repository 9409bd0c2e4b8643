// write_survey_page: a survey as one self-contained page.
#include <fmt/format.h>

#include <algorithm>
#include <initializer_list>
#include <span>
#include <string>
#include <string_view>

#include "grainside/survey_report.h"
#include "report/content_text.h"
#include "report/fixed_texts.h"
#include "report/html/html_writer.h"
#include "report/html/page_frame.h"
#include "report/html/page_parts.h"
#include "report/html/survey_plots.h"
#include "report/survey_text.h"
#include "report/view_text.h"

namespace grainside {
inline namespace v0 {

using report::counted;

namespace {

constexpr std::size_t kMostInTable = 200;
constexpr std::size_t kMostPlotted = 40;

struct SurveySection {
    std::string_view id, title;
    bool shown;
};

class SurveyPage {
public:
    SurveyPage(const SurveyContext& context, std::string& out)
        : context_(context), survey_(context.survey), html_(out) {}

    void write() {
        report::begin_page(html_, "Survey: " + report::extent_text(survey_), "To the survey");
        html_.begin("main", {{"id", "content"}});
        html_.element("p", {{"class", "kicker"}}, "Survey of listings");
        html_.element("h1", counted(survey_.all.listings, "listing", "listings"));
        html_.element("p", {{"class", "soft"}}, report::extent_text(survey_) + ". " + report::asked_text(context_));
        write_answers();
        write_contents();
        write_sections();
        html_.end();
        write_footer();
        report::end_page(html_);
    }

private:
    const SurveyRate& asked(const std::array<SurveyRate, kSurveyedGrades>& rates) const {
        return rates[report::asked_grade(survey_)];
    }

    void write_answers() {
        html_.begin("div", {{"class", "answers"}});
        answer(report::capitalised(report::what_is_counted(survey_.options.at)), asked(survey_.all.rates));
        if (survey_.options.at != Grade::vague) {
            answer(report::capitalised(report::what_is_counted(Grade::vague)), survey_.all.rates.back());
        }
        html_.end();
    }

    void answer(std::string_view question, const SurveyRate& rate) {
        html_.begin("div", {{"class", "answer"}});
        html_.element("p", {{"class", "question"}}, question);
        html_.element("p", {{"class", "reply"}}, report::percent_of(rate.rate));
        html_.element("p", {{"class", "soft"}},
                      fmt::format("{} of {}; {:g} % limits {}", rate.count, rate.of, 100 * survey_.options.confidence,
                                  report::limits_of(rate)));
        html_.end();
    }

    std::array<SurveySection, 8> sections() const {
        const SurveyShown& shown = context_.shown;
        return {{{"grades", "Grades", shown.grades},
                 {"sellers", "Sellers", shown.sellers},
                 {"parts", "Parts", shown.parts},
                 {"categories", "Categories", shown.categories},
                 {"markets", "Markets", shown.markets},
                 {"rules", "Rules", shown.rules},
                 {"worst", "Worst listings", !survey_.worst.empty()},
                 {"wordings", "Commonest wordings", !survey_.wordings.empty()}}};
    }

    void write_contents() {
        html_.begin("nav", {{"class", "contents"}, {"aria-label", "Sections"}});
        html_.begin("ul");
        for (const SurveySection& section : sections()) {
            if (!section.shown) continue;
            html_.begin("li");
            html_.element("a", {{"href", '#' + std::string(section.id)}}, section.title);
            html_.end();
        }
        html_.end();
        html_.end();
    }

    void write_sections() {
        for (const SurveySection& section : sections()) {
            if (!section.shown) continue;
            html_.begin("section", {{"id", section.id}});
            html_.element("h2", section.title);
            if (section.id == "grades") write_grades();
            if (section.id == "sellers") write_sellers();
            if (section.id == "parts") write_parts();
            if (section.id == "categories") write_groups(survey_.categories, "not known");
            if (section.id == "markets") write_groups(survey_.markets, "none stated");
            if (section.id == "rules") write_rules();
            if (section.id == "worst") write_worst();
            if (section.id == "wordings") write_wordings();
            html_.end();
        }
    }

    void begin_table(std::initializer_list<std::string_view> titles) {
        html_.begin("table", {{"class", "stack"}});
        html_.begin("thead");
        html_.begin("tr");
        for (const std::string_view title : titles) html_.element("th", {{"scope", "col"}}, title);
        html_.end();
        html_.end();
        html_.begin("tbody");
    }
    void end_table() {
        html_.end();
        html_.end();
    }
    void row_heading(std::string_view text) { html_.element("th", {{"scope", "row"}}, text); }
    void cell(std::string_view text) { html_.element("td", text); }
    // On a narrow screen the cells of a row stand below each other without the titles, so each says what it is.
    void rate_cells(const SurveyRate& rate) {
        cell(fmt::format("{} of {}", rate.count, rate.of));
        cell(fmt::format("{} ({})", report::percent_of(rate.rate), report::limits_of(rate)));
    }
    std::string rate_title() const { return fmt::format("Rate ({:g} % limits)", 100 * survey_.options.confidence); }

    void left_out(std::size_t all, std::size_t shown) {
        if (all <= shown) return;
        html_.element("p", {{"class", "soft"}},
                      fmt::format("Of {} these are the first {}; the CSV and JSON forms have all.", all, shown));
    }

    void write_grades() {
        html_.element("p", "Listings by their worst finding, and with a finding of the grade or a worse one.");
        begin_table({"Grade", "Worst finding", "This or worse", rate_title()});
        for (const Grade grade : report::shown_grades(survey_)) {
            const auto at = static_cast<std::size_t>(grade);
            html_.begin("tr");
            html_.begin("th", {{"scope", "row"}});
            report::write_grade(html_, grade);
            html_.end();
            cell(fmt::format("worst in {}", survey_.all.by_worst[at]));
            rate_cells(survey_.all.rates[at]);
            html_.end();
        }
        end_table();
        html_.element("p", fmt::format("{} without a finding.", report::capitalised(counted(survey_.all.by_worst.back(),
                                                                                            "listing", "listings"))));
    }

    void write_sellers() {
        const std::span<const SurveyGroup> plotted =
            std::span(survey_.sellers).first(std::min(survey_.sellers.size(), kMostPlotted));
        if (!plotted.empty()) {
            html_.begin("figure");
            html_.element("figcaption",
                          fmt::format("{}, in percent: rate, {:g} % limits; the upright line is the rate of all",
                                      report::capitalised(report::what_is_counted(survey_.options.at)),
                                      100 * survey_.options.confidence));
            report::write_rate_plot(html_, survey_, plotted);
            html_.end();
            html_.begin("figure");
            std::string order;
            for (const Grade grade : report::shown_grades(survey_)) order += fmt::format("{} / ", name_of(grade));
            html_.element("figcaption",
                          "Listings by their worst finding, in percent; the figures are listings: " + order + "none");
            report::write_grade_plot(html_, survey_, plotted);
            html_.end();
            left_out(survey_.sellers.size(), plotted.size());
        }
        write_groups(survey_.sellers, "not stated");
        write_further();
        write_rules_of_sellers();
    }

    void write_groups(const std::vector<SurveyGroup>& groups, std::string_view nameless) {
        html_.element(
            "p", report::capitalised(report::what_is_counted(survey_.options.at)) + ", highest lower limit first.");
        begin_table({"Name", "Flagged", rate_title(), "Different wordings", "To all others"});
        const std::size_t shown = std::min(groups.size(), kMostInTable);
        for (const SurveyGroup& group : std::span(groups).first(shown)) {
            html_.begin("tr");
            row_heading(report::group_name(group, nameless));
            rate_cells(asked(group.rates));
            cell(report::distinct_text(group.wordings) + (group.wordings.count == 1 ? " wording" : " wordings"));
            cell(difference_text(group));
            html_.end();
        }
        end_table();
        left_out(groups.size(), shown);
    }

    static std::string difference_text(const SurveyGroup& group) {
        if (group.standing == SurveyStanding::not_compared) return "not compared";
        return fmt::format("{}: {:+.1f} points ({:+.1f} to {:+.1f})", report::name_of_standing(group.standing),
                           100 * group.difference, 100 * group.difference_low, 100 * group.difference_high);
    }

    void write_further() {
        const std::vector<report::FurtherListings> list = report::further_listings(survey_);
        if (list.empty()) return;
        html_.element("h3", "How many more to read");
        html_.element("p", report::further_text(survey_) + ':');
        html_.begin("ul", {{"class", "plain"}});
        for (std::size_t at = 0; at < std::min(list.size(), kMostInTable); ++at) {
            html_.element("li", list[at].name + ": " + std::to_string(list[at].further));
        }
        html_.end();
        left_out(list.size(), kMostInTable);
    }

    void write_rules_of_sellers() {
        if (!context_.shown.rules) return;
        html_.element("h3", "What sellers are flagged for");
        begin_table({"Seller", "Rule", "Listings", rate_title()});
        const std::size_t shown = std::min(survey_.sellers.size(), kMostPlotted);
        for (const SurveyGroup& seller : std::span(survey_.sellers).first(shown)) {
            for (const SurveyRuleCount& rule : seller.rules) {
                html_.begin("tr");
                row_heading(report::group_name(seller));
                cell(context_.book.rules()[rule.rule].id);
                rate_cells(rule.listings);
                html_.end();
            }
        }
        end_table();
        left_out(survey_.sellers.size(), shown);
    }

    void write_parts() {
        html_.element("p", "Claims about the part that carry a finding of grade " +
                               report::grade_or_worse(survey_.options.at) + ". Claims of one listing hang together.");
        begin_table({"Part", "Flagged", rate_title()});
        for (const SurveyPart& part : survey_.parts) {
            html_.begin("tr");
            row_heading(name_of(part.part));
            rate_cells(asked(part.rates));
            html_.end();
        }
        end_table();
    }

    void write_rules() {
        html_.element("p", "Listings in which the rule flags words.");
        begin_table({"Rule", "Grade", "Listings", rate_title(), "Sellers"});
        for (const SurveyRule& rule : survey_.rules) {
            const RuleInfo& info = context_.book.rules()[rule.count.rule];
            html_.begin("tr");
            html_.begin("th", {{"scope", "row"}});
            html_.text(info.title);
            html_.element("span", {{"class", "basis"}}, info.id);
            html_.end();
            html_.begin("td");
            report::write_grade(html_, info.grade);
            html_.end();
            rate_cells(rule.count.listings);
            cell(counted(rule.sellers, "seller", "sellers"));
            html_.end();
        }
        end_table();
    }

    void write_worst() {
        html_.element("p", "By worst grade, then number of findings.");
        begin_table({"Listing", "Seller", "Findings", "First of the worst"});
        for (const SurveyListing& listing : survey_.worst) {
            html_.begin("tr");
            row_heading(listing.id);
            cell(listing.seller.empty() ? std::string("not stated") : listing.seller);
            cell(report::findings_by_grade(listing));
            html_.begin("td");
            report::write_grade(html_, listing.worst);
            html_.text(" '" + listing.words + "'");
            html_.element("span", {{"class", "basis"}}, context_.book.rules()[listing.rule].id);
            html_.end();
            html_.end();
        }
        end_table();
    }

    void write_wordings() {
        html_.element("p", fmt::format("Of {}, written alike but for capitals, spaces and hyphens.",
                                       report::distinct_text(survey_.different_wordings)));
        begin_table({"Words", "Grade", "In", "As in", "There say"});
        for (const SurveyWording& wording : survey_.wordings) {
            html_.begin("tr");
            html_.begin("th", {{"scope", "row"}});
            html_.text(wording.words);
            html_.element("span", {{"class", "basis"}}, context_.book.rules()[wording.rule].id);
            html_.end();
            html_.begin("td");
            report::write_grade(html_, wording.grade);
            html_.end();
            cell(fmt::format("{}, {} {}", counted(wording.listings, "listing", "listings"),
                             report::distinct_text(wording.sellers),
                             wording.sellers.count == 1 ? "seller" : "sellers"));
            cell(wording.listing + ", " + wording.field);
            cell(wording.say_instead.empty() ? std::string("no wording offered") : wording.say_instead);
            html_.end();
        }
        end_table();
    }

    void write_footer() {
        html_.begin("footer");
        html_.element("h2", "How to read this");
        html_.begin("ul", {{"class", "plain"}});
        for (const std::string& line : report::left_together(survey_)) html_.element("li", line);
        for (const std::string& note : report::survey_notes(survey_)) html_.element("li", note);
        html_.end();
        report::write_grade_meanings(html_);
        html_.element("p", report::kNoAdvice);
        html_.element("p", fmt::format("Rule book {}: {}.", context_.book.digest(),
                                       counted(context_.book.rules().size(), "rule", "rules")));
        html_.end();
    }

    const SurveyContext& context_;
    const Survey& survey_;
    report::HtmlWriter html_;
};

}  // namespace

void write_survey_page(const SurveyContext& context, std::string& out) {
    SurveyPage(context, out).write();
}

}  // namespace v0
}  // namespace grainside
