#include "grainside/checker.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "claims/claim_parser.h"
#include "rules/book_data.h"
#include "rules/rule_matcher.h"
#include "rules/wording_template.h"
#include "verdict/one_cause.h"

namespace grainside {
inline namespace v0 {

struct Checker::Workspace {
    Workspace(const RuleBook& rule_book, CheckOptions check_options)
        : book(rule_book),
          options(std::move(check_options)),
          parser(rule_book.data().vocabulary),
          matcher(rule_book.data()) {}

    // The markets asked for; where none were, the one that the listing names.
    std::span<const std::string> markets_of(const Listing& listing) {
        if (!options.markets.empty()) return options.markets;
        region.clear();
        if (listing.region.size() == 2) {
            std::string code(listing.region);
            for (char& c : code) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
            if (code == "gb") code = "uk";
            region.push_back(std::move(code));
        }
        return region;
    }

    const RuleBook& book;
    CheckOptions options;
    claims::ClaimParser parser;
    rules::RuleMatcher matcher;
    std::vector<std::string> region;
    CheckResult result;
};

Checker::Checker(const RuleBook& book, CheckOptions options)
    : work_(std::make_unique<Workspace>(book, std::move(options))) {}
Checker::Checker(Checker&&) noexcept = default;
Checker& Checker::operator=(Checker&&) noexcept = default;
Checker::~Checker() = default;

const CheckResult& Checker::check(const Listing& listing) {
    Workspace& work = *work_;
    CheckResult& result = work.result;
    result.findings.clear();
    work.parser.parse(listing, result.mentions);
    result.fields_too_long = work.parser.fields_too_long();
    result.claim_count = static_cast<std::uint32_t>(std::count_if(
        result.mentions.begin(), result.mentions.end(), [](const Claim& claim) { return is_claim_kind(claim.kind); }));
    work.matcher.select(work.markets_of(listing), work.options.on);
    const std::uint8_t category = work.parser.category();
    work.matcher.match(result.mentions, {category, work.book.data().vocabulary.categories[category].main_part},
                       result.findings);
    verdict::keep_one_per_cause(result.mentions, result.findings);
    return result;
}

std::string Checker::say_instead(const Listing& listing, const Finding& finding) const {
    const RuleBook& book = work_->book;
    const CheckResult& result = work_->result;
    const Claim& claim = result.mentions[finding.claim];
    const Claim* other = finding.against == kNoClaim ? nullptr : &result.mentions[finding.against];
    rules::TemplateValues values;
    values.says = book.concept_wording(claim.says);
    values.called = book.concept_wording(claim.called);
    if (other != nullptr) values.other = book.concept_wording(other->says);
    values.part = claim.part == Part::whole ? std::string_view("product") : name_of(claim.part);
    values.words = listing.fields[claim.field].text.substr(finding.start, finding.end - finding.start);
    values.place = book.concept_wording(other != nullptr && other->place != 0 ? other->place : claim.place);
    std::string share;
    if (claim.quantity && claim.quantity->unit == Unit::percent) share = fmt::format("{:g}", claim.quantity->low);
    values.share = share;
    return rules::fill_template(book.rules()[finding.rule].say_instead, values);
}

}  // namespace v0
}  // namespace grainside
