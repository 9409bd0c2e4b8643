// write_survey_json: a survey as one JSON object.
#include <string_view>
#include <vector>

#include "grainside/survey_report.h"
#include "report/json_writer.h"
#include "report/rounded.h"
#include "report/survey_text.h"

namespace grainside {
inline namespace v0 {
namespace {

class SurveyObject {
public:
    SurveyObject(const SurveyContext& context, std::string& out)
        : context_(context), survey_(context.survey), json_(out) {}

    void write() {
        json_.begin_object();
        json_.member("schema", std::uint64_t{1});
        write_asked();
        const SurveyShown& shown = context_.shown;
        json_.key("all");
        group(survey_.all);
        distinct("sellers", survey_.different_sellers);
        distinct("wordings", survey_.different_wordings);
        if (shown.sellers) {
            groups("by_seller", survey_.sellers);
            json_.member("listings_of_other_sellers", survey_.listings_of_others);
        }
        if (shown.parts) write_parts();
        if (shown.categories) groups("by_category", survey_.categories);
        if (shown.markets) groups("by_market", survey_.markets);
        if (shown.rules) write_rules();
        write_worst();
        write_wordings();
        texts("notes", report::survey_notes(survey_));
        json_.member("advice", "This is not legal advice; local law and licensed practice decide.");
        json_.end_object();
    }

private:
    void texts(std::string_view key, const std::vector<std::string>& list) {
        json_.key(key);
        json_.begin_array();
        for (const std::string& text : list) json_.value(text);
        json_.end_array();
    }

    void write_asked() {
        json_.member("confidence", survey_.options.confidence);
        json_.member("within", survey_.options.within);
        json_.member("at", name_of(survey_.options.at));
        texts("markets", survey_.options.markets);
        json_.optional_member("on", context_.on);
        json_.member("reading_errors", survey_.reading_errors);
        json_.key("rule_book");
        json_.begin_object();
        json_.member("digest", context_.book.digest());
        json_.member("rules", std::uint64_t{context_.book.rules().size()});
        json_.end_object();
    }

    void distinct(std::string_view key, const SurveyDistinct& number) {
        json_.key(key);
        json_.begin_object();
        json_.member("count", number.count);
        json_.key("estimated");
        json_.value_bool(number.estimated);
        json_.end_object();
    }

    void rate_members(const SurveyRate& rate) {
        json_.member("count", rate.count);
        json_.member("of", rate.of);
        json_.member("rate", report::rounded(rate.rate));
        json_.member("low", report::rounded(rate.low));
        json_.member("high", report::rounded(rate.high));
    }

    void rates(const std::array<SurveyRate, kSurveyedGrades>& list) {
        json_.key("rates");
        json_.begin_object();
        for (std::size_t grade = 0; grade < list.size(); ++grade) {
            json_.key(name_of(static_cast<Grade>(grade)));
            json_.begin_object();
            rate_members(list[grade]);
            json_.end_object();
        }
        json_.end_object();
    }

    void group(const SurveyGroup& group) {
        json_.begin_object();
        json_.optional_member("name", group.name);
        json_.member("listings", group.listings);
        json_.member("claims", group.claims);
        json_.member("findings", group.findings);
        distinct("wordings", group.wordings);
        json_.member("without_finding", group.by_worst.back());
        rates(group.rates);
        if (group.standing != SurveyStanding::not_compared) {
            json_.key("to_others");
            json_.begin_object();
            json_.member("standing", report::name_of_standing(group.standing));
            json_.member("difference", report::rounded(group.difference));
            json_.member("low", report::rounded(group.difference_low));
            json_.member("high", report::rounded(group.difference_high));
            json_.end_object();
        }
        json_.member("further_listings", group.further);
        if (context_.shown.rules && !group.rules.empty()) {
            json_.key("rules");
            json_.begin_array();
            for (const SurveyRuleCount& rule : group.rules) rule_object(rule);
            json_.end_array();
        }
        json_.end_object();
    }

    void groups(std::string_view key, const std::vector<SurveyGroup>& list) {
        json_.key(key);
        json_.begin_array();
        for (const SurveyGroup& one : list) group(one);
        json_.end_array();
    }

    std::string_view rule_id(std::uint32_t rule) const { return context_.book.rules()[rule].id; }

    void rule_object(const SurveyRuleCount& rule) {
        json_.begin_object();
        json_.member("rule", rule_id(rule.rule));
        rate_members(rule.listings);
        json_.end_object();
    }

    void write_parts() {
        json_.key("by_part");
        json_.begin_array();
        for (const SurveyPart& part : survey_.parts) {
            json_.begin_object();
            json_.member("part", name_of(part.part));
            json_.member("claims", part.claims);
            rates(part.rates);
            json_.end_object();
        }
        json_.end_array();
    }

    void write_rules() {
        json_.key("by_rule");
        json_.begin_array();
        for (const SurveyRule& rule : survey_.rules) {
            json_.begin_object();
            json_.member("rule", rule_id(rule.count.rule));
            json_.member("grade", name_of(context_.book.rules()[rule.count.rule].grade));
            rate_members(rule.count.listings);
            json_.member("sellers", rule.sellers);
            json_.end_object();
        }
        json_.end_array();
    }

    void write_worst() {
        json_.key("worst_listings");
        json_.begin_array();
        for (const SurveyListing& listing : survey_.worst) {
            json_.begin_object();
            json_.member("listing", std::string_view(listing.id));
            json_.optional_member("seller", listing.seller);
            json_.member("worst", name_of(listing.worst));
            json_.member("findings", listing.findings);
            json_.key("by_grade");
            json_.begin_object();
            for (std::size_t grade = 0; grade < kSurveyedGrades; ++grade) {
                json_.member(name_of(static_cast<Grade>(grade)), listing.by_grade[grade]);
            }
            json_.end_object();
            json_.member("words", std::string_view(listing.words));
            json_.member("rule", rule_id(listing.rule));
            json_.end_object();
        }
        json_.end_array();
    }

    void write_wordings() {
        json_.key("commonest_wordings");
        json_.begin_array();
        for (const SurveyWording& wording : survey_.wordings) {
            json_.begin_object();
            json_.member("words", std::string_view(wording.words));
            json_.member("rule", rule_id(wording.rule));
            json_.member("grade", name_of(wording.grade));
            json_.member("listings", wording.listings);
            distinct("sellers", wording.sellers);
            json_.member("listing", std::string_view(wording.listing));
            json_.member("field", std::string_view(wording.field));
            json_.optional_member("say_instead", wording.say_instead);
            json_.end_object();
        }
        json_.end_array();
    }

    const SurveyContext& context_;
    const Survey& survey_;
    report::JsonWriter json_;
};

}  // namespace

void write_survey_json(const SurveyContext& context, std::string& out) {
    SurveyObject(context, out).write();
    out += '\n';
}

}  // namespace v0
}  // namespace grainside
