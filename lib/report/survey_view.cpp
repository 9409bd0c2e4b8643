// write_survey_view: a survey for people, in lines.
#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/survey_report.h"
#include "report/grade_colour.h"
#include "report/plain_lines.h"
#include "report/survey_text.h"
#include "report/text_table.h"
#include "report/view_text.h"

namespace grainside {
inline namespace v0 {

using report::counted;
using report::TextTable;

namespace {

constexpr std::size_t kMostShown = 25;     // of one kind of group
constexpr std::size_t kRulesOfSeller = 3;  // told of each seller
constexpr std::size_t kEntryIndent = 6;    // behind the number of an entry
constexpr std::size_t kNoteIndent = 2;
constexpr std::size_t kMostCellsOfWords = 60;
constexpr std::size_t kRuleCells = 28;  // ids of rules should stay whole

class SurveyView {
public:
    SurveyView(const SurveyContext& context, const ViewOptions& options, std::string& out)
        : context_(context),
          survey_(context.survey),
          colours_(options.colour),
          width_(report::width_of(options)),
          out_(out) {}

    void write() {
        out_ += colours_.heading();
        report::append_wrapped(out_, report::extent_text(survey_), 0, width_);
        out_ += colours_.plain();
        report::append_wrapped(out_, report::asked_text(context_), 0, width_);
        out_ += '\n';
        if (survey_.all.listings != 0) write_tables();
        write_notes();
        write_view_end(context_.book, out_);
    }

private:
    void heading(std::string_view title, std::string_view more = {}) {
        out_ += colours_.heading();
        out_ += title;
        out_ += colours_.plain();
        out_ += '\n';
        if (!more.empty()) indented(more, kNoteIndent);
    }

    void indented(std::string_view text, std::size_t indent) {
        out_.append(indent, ' ');
        report::append_wrapped(out_, text, indent, width_);
    }

    void end(const TextTable& table, std::size_t left_out = 0) {
        table.write(colours_, width_, out_);
        if (left_out != 0) indented(fmt::format("and {} more; --format csv has all", left_out), kNoteIndent);
        out_ += '\n';
    }

    const SurveyRate& asked(const std::array<SurveyRate, kSurveyedGrades>& rates) const {
        return rates[report::asked_grade(survey_)];
    }

    void write_tables() {
        const SurveyShown& shown = context_.shown;
        if (shown.grades) write_grades();
        if (shown.sellers) {
            write_groups("Sellers", survey_.sellers, "not stated");
            write_further();
            write_rules_of_sellers();
        }
        if (shown.parts) write_parts();
        if (shown.categories) write_groups("Categories", survey_.categories, "not known");
        if (shown.markets) write_groups("Markets", survey_.markets, "none stated");
        if (shown.rules) write_rules();
        write_worst();
        write_wordings();
    }

    void write_grades() {
        heading("Grades", "listings by their worst finding, and with a finding of the grade or a worse one");
        TextTable table({"grade", "worst", "or worse", "rate", limits_title()});
        for (const Grade grade : report::shown_grades(survey_)) {
            const auto at = static_cast<std::size_t>(grade);
            const SurveyRate& rate = survey_.all.rates[at];
            table.add({std::string(name_of(grade)), std::to_string(survey_.all.by_worst[at]),
                       std::to_string(rate.count), report::percent_of(rate.rate), report::limits_of(rate)});
        }
        table.add({"no finding", std::to_string(survey_.all.by_worst.back()), "", "", ""});
        end(table);
    }

    std::string limits_title() const { return fmt::format("{:g} % limits", 100 * survey_.options.confidence); }

    void write_groups(std::string_view title, const std::vector<SurveyGroup>& groups, std::string_view nameless) {
        heading(title, report::what_is_counted(survey_.options.at) + ", highest lower limit first");
        const bool compared = std::any_of(groups.begin(), groups.end(), [](const SurveyGroup& group) {
            return group.standing != SurveyStanding::not_compared;
        });
        std::vector<std::string> titles{"", "flagged", "of", "rate", limits_title(), "wordings"};
        if (compared) titles.emplace_back("to others");
        TextTable table(std::move(titles));
        for (std::size_t at = 0; at < std::min(groups.size(), kMostShown); ++at) {
            const SurveyGroup& group = groups[at];
            const SurveyRate& rate = asked(group.rates);
            std::vector<std::string> row{
                report::group_name(group, nameless), std::to_string(rate.count), std::to_string(rate.of),
                report::percent_of(rate.rate),       report::limits_of(rate),    report::distinct_text(group.wordings)};
            if (compared) row.emplace_back(report::name_of_standing(group.standing));
            table.add(std::move(row));
        }
        end(table, groups.size() - std::min(groups.size(), kMostShown));
    }

    void write_further() {
        const std::vector<report::FurtherListings> list = report::further_listings(survey_);
        if (list.empty()) return;
        std::string text = report::further_text(survey_);
        std::string_view separator = ": ";
        for (std::size_t at = 0; at < std::min(list.size(), kMostShown); ++at) {
            text +=
                fmt::format("{}{} {}", separator, report::one_line(list[at].name, kMostCellsOfWords), list[at].further);
            separator = ", ";
        }
        if (list.size() > kMostShown) text += fmt::format(", and {} more sellers", list.size() - kMostShown);
        indented(text + '.', kNoteIndent);
        out_ += '\n';
    }

    void write_rules_of_sellers() {
        heading("What sellers are flagged for",
                fmt::format("listings in which a rule of any grade flags words; of each seller the first {}",
                            kRulesOfSeller));
        for (std::size_t at = 0; at < std::min(survey_.sellers.size(), kMostShown); ++at) {
            const SurveyGroup& seller = survey_.sellers[at];
            std::string text = report::one_line(report::group_name(seller), kMostCellsOfWords) + ": ";
            if (seller.rules.empty()) text += "nothing";
            for (std::size_t rule = 0; rule < std::min(seller.rules.size(), kRulesOfSeller); ++rule) {
                const SurveyRuleCount& count = seller.rules[rule];
                text += fmt::format("{}{} {} of {} ({})", rule == 0 ? "" : ", ", context_.book.rules()[count.rule].id,
                                    count.listings.count, count.listings.of, report::limits_of(count.listings));
            }
            out_.append(kNoteIndent, ' ');
            report::append_wrapped(out_, text, kNoteIndent + 2, width_);
        }
        out_ += '\n';
    }

    void write_parts() {
        heading("Parts",
                "claims about the part that carry a finding of grade " + report::grade_or_worse(survey_.options.at));
        TextTable table({"", "flagged", "of", "rate", limits_title()});
        for (const SurveyPart& part : survey_.parts) {
            const SurveyRate& rate = asked(part.rates);
            table.add({std::string(name_of(part.part)), std::to_string(rate.count), std::to_string(rate.of),
                       report::percent_of(rate.rate), report::limits_of(rate)});
        }
        end(table);
    }

    void write_rules() {
        if (survey_.rules.empty()) return;
        heading("Rules", "listings in which the rule flags words, of all");
        TextTable table({"", "listings", "rate", limits_title(), "grade", "sellers"}, kRuleCells);
        for (std::size_t at = 0; at < std::min(survey_.rules.size(), kMostShown); ++at) {
            const SurveyRule& rule = survey_.rules[at];
            const RuleInfo& info = context_.book.rules()[rule.count.rule];
            table.add({info.id, std::to_string(rule.count.listings.count), report::percent_of(rule.count.listings.rate),
                       report::limits_of(rule.count.listings), std::string(name_of(info.grade)),
                       std::to_string(rule.sellers)});
        }
        end(table, survey_.rules.size() - std::min(survey_.rules.size(), kMostShown));
    }

    // "   1. " and the first line of an entry.
    void entry(std::size_t number, std::string_view text) {
        out_ += fmt::format("{:>4}. ", number);
        report::append_wrapped(out_, text, kEntryIndent, width_);
    }

    static std::string in_quotes(const std::string& words) {
        return '\'' + report::one_line(words, kMostCellsOfWords) + '\'';
    }

    void write_worst() {
        if (survey_.worst.empty()) return;
        heading("Worst listings", "by worst grade, then number of findings");
        for (std::size_t at = 0; at < survey_.worst.size(); ++at) {
            const SurveyListing& listing = survey_.worst[at];
            std::string text = report::one_line(listing.id, kMostCellsOfWords);
            if (!listing.seller.empty()) text += " (" + report::one_line(listing.seller, kMostCellsOfWords) + ')';
            text += ": " + report::findings_by_grade(listing) + "; " + in_quotes(listing.words) + " [" +
                    context_.book.rules()[listing.rule].id + ']';
            entry(at + 1, text);
        }
        out_ += '\n';
    }

    void write_wordings() {
        if (survey_.wordings.empty()) return;
        heading("Commonest flagged wordings", fmt::format("of {}, written alike but for capitals, spaces and hyphens",
                                                          report::distinct_text(survey_.different_wordings)));
        for (std::size_t at = 0; at < survey_.wordings.size(); ++at) {
            const SurveyWording& wording = survey_.wordings[at];
            std::string text = in_quotes(wording.words) + " in " + counted(wording.listings, "listing", "listings");
            if (survey_.sellers.size() > 1) {
                text += fmt::format(" of {} {}", report::distinct_text(wording.sellers),
                                    wording.sellers.count == 1 ? "seller" : "sellers");
            }
            const RuleInfo& rule = context_.book.rules()[wording.rule];
            text += fmt::format(": {} [{}]; as in {}, {}", name_of(wording.grade), rule.id,
                                report::one_line(wording.listing, kMostCellsOfWords),
                                report::one_line(wording.field, kMostCellsOfWords));
            if (!wording.say_instead.empty()) text += "; there say " + in_quotes(wording.say_instead);
            entry(at + 1, text);
        }
        out_ += '\n';
    }

    void write_notes() {
        for (const std::string& line : report::left_together(survey_)) report::append_wrapped(out_, line, 0, width_);
        for (const std::string& note : report::survey_notes(survey_)) report::append_wrapped(out_, note, 0, width_);
        out_ += '\n';
    }

    const SurveyContext& context_;
    const Survey& survey_;
    report::Colours colours_;
    std::size_t width_;
    std::string& out_;
};

}  // namespace

void write_survey_view(const SurveyContext& context, const ViewOptions& options, std::string& out) {
    SurveyView(context, options, out).write();
}

}  // namespace v0
}  // namespace grainside
