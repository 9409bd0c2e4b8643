#include "verdict/wording.h"

#include <fmt/format.h>

#include <string_view>

#include "rules/wording_template.h"

namespace grainside::verdict {

bool asks_for_bare(const RuleBook& book, const Finding& finding) {
    return book.rules()[finding.rule].say_instead.find("{bare}") != std::string::npos;
}

std::string wording_of(const RuleBook& book, const Listing& listing, const CheckResult& result, const Finding& finding,
                       std::string_view bare) {
    const Claim& claim = result.mentions[finding.claim];
    const Claim* other = finding.against == kNoClaim ? nullptr : &result.mentions[finding.against];
    rules::TemplateValues values;
    values.says = book.concept_wording(claim.says);
    values.called = book.concept_wording(claim.called);
    if (other != nullptr) values.other = book.concept_wording(other->says);
    values.part = claim.part == Part::whole ? std::string_view("product") : name_of(claim.part);
    values.words = listing.fields[claim.field].text.substr(finding.start, finding.end - finding.start);
    values.place = book.concept_wording(other != nullptr && other->place != 0 ? other->place : claim.place);
    values.bare = bare;
    std::string share;
    if (claim.quantity && claim.quantity->unit == Unit::percent) share = fmt::format("{:g}", claim.quantity->low);
    values.share = share;
    return rules::fill_template(book.rules()[finding.rule].say_instead, values);
}

}  // namespace grainside::verdict
