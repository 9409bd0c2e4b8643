#include "report/told_rule.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "grainside/checker.h"
#include "verdict/proof.h"

namespace grainside::report {
namespace {

// The finding of the rule on the words that its file names, as the check gives it.
bool find_by_checking(const RuleBook& book, const RuleInfo& rule, Checker& checker, ToldExample& told) {
    const CheckResult& result = checker.check(told.listing);
    for (const Finding& finding : result.findings) {
        const std::size_t field = result.mentions[finding.claim].field;
        const std::string_view text = told.listing.fields[field].text;
        if (&book.rules()[finding.rule] != &rule ||
            text.substr(finding.start, finding.end - finding.start) != told.proof->words) {
            continue;
        }
        told.field = field;
        told.start = finding.start;
        told.end = finding.end;
        return true;
    }
    return false;
}

// Of a book that does not prove itself: where the words stand first.
void find_by_reading(ToldExample& told) {
    for (std::size_t field = 0; field < told.listing.fields.size(); ++field) {
        const std::size_t at = told.listing.fields[field].text.find(told.proof->words);
        if (at == std::string_view::npos) continue;
        told.field = field;
        told.start = at;
        told.end = at + told.proof->words.size();
        return;
    }
}

std::vector<ToldExample> told_examples(const std::vector<ProofText>& proofs) {
    std::vector<ToldExample> examples;
    for (const ProofText& proof : proofs) {
        ToldExample& told = examples.emplace_back();
        told.proof = &proof;
        told.listing = listing_of(proof);
    }
    return examples;
}

std::vector<std::string> advice_of(const RuleInfo& rule) {
    std::vector<std::string> advice;
    if (!rule.say_instead.empty()) advice.push_back(fmt::format("Write: {}", readable_template(rule.say_instead)));
    if (!rule.remedy.empty()) advice.push_back(rule.remedy);
    if (rule.leave_out) advice.emplace_back("The words can be left out, and nothing that is known goes with them.");
    return advice;
}

}  // namespace

ToldRule RuleTeller::tell(const RuleInfo& rule) const {
    ToldRule told;
    told.rule = &rule;
    told.markets = markets_text(rule);
    told.days = days_text(rule);
    told.condition = conditions_.steps_of(rule);
    told.instead = advice_of(rule);
    for (const std::uint32_t index : rule.sources) told.sources.push_back(&book_.sources()[index]);
    told.twins = families_.twins_of(rule);
    told.flags = told_examples(rule.flags);
    told.passes = told_examples(rule.passes);
    Checker checker(book_, options_of_proof(rule));
    for (ToldExample& example : told.flags) {
        if (!find_by_checking(book_, rule, checker, example)) find_by_reading(example);
    }
    return told;
}

std::string_view label_of_field(std::string_view field) {
    return field == "description" ? std::string_view() : field;
}

std::string twin_text(const RuleBook& book, const RuleInfo& twin) {
    return fmt::format("{}; {}; {}: {}", name_of(twin.grade), markets_text(twin), days_text(twin),
                       fmt::join(cites_of(book, twin), "; "));
}

}  // namespace grainside::report
