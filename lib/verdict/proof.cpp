#include "verdict/proof.h"

#include <fmt/format.h>

namespace grainside {
inline namespace v0 {

CheckOptions options_of_proof(const RuleInfo& rule) {
    CheckOptions options;
    if (!rule.markets.empty()) options.markets = {rule.markets.front()};
    options.on = rule.from;
    return options;
}

Listing listing_of(const ProofText& example) {
    Listing listing;
    if (!example.title.empty()) listing.fields.push_back({"name", example.title});
    if (!example.text.empty()) listing.fields.push_back({"description", example.text});
    if (!example.material.empty()) listing.fields.push_back({"material", example.material});
    if (!example.category.empty()) listing.fields.push_back({"category", example.category});
    return listing;
}

std::string one_line_of(const ProofText& example) {
    std::string line;
    const auto add = [&](std::string_view label, std::string_view text) {
        if (!text.empty()) line += fmt::format("{}{}{}", line.empty() ? "" : " | ", label, text);
    };
    add("name: ", example.title);
    add("material: ", example.material);
    add("", example.text);
    return line;
}

namespace {

std::string_view words_of(const Listing& listing, const CheckResult& result, const Finding& finding) {
    return listing.fields[result.mentions[finding.claim].field].text.substr(finding.start, finding.end - finding.start);
}

std::string told(const RuleBook& book, const Listing& listing, const CheckResult& result) {
    std::string text;
    for (const Finding& finding : result.findings) {
        text += fmt::format("{}{} '{}' [{}]", text.empty() ? "" : "; ", name_of(finding.grade),
                            words_of(listing, result, finding), book.rules()[finding.rule].id);
    }
    return text.empty() ? "nothing" : text;
}

class Prover {
public:
    Prover(const RuleBook& book, const RuleInfo& rule, ProofReport& report)
        : book_(book), rule_(rule), report_(report), checker_(book, options_of_proof(rule)) {}

    void prove() {
        ++report_.rules;
        for (const ProofText& example : rule_.flags) prove_flagged(example);
        for (const ProofText& example : rule_.passes) prove_passed(example);
    }

private:
    void fault(const ProofText& example, std::string message) {
        report_.faults.push_back({rule_.id, rule_.file, example.line, one_line_of(example), std::move(message)});
    }

    void prove_flagged(const ProofText& example) {
        ++report_.examples;
        const Listing listing = listing_of(example);
        const CheckResult& result = checker_.check(listing);
        const bool right = result.findings.size() == 1 && &book_.rules()[result.findings[0].rule] == &rule_ &&
                           words_of(listing, result, result.findings[0]) == example.words;
        if (!right) {
            fault(example, fmt::format("wanted {} '{}', found {}", name_of(rule_.grade), example.words,
                                       told(book_, listing, result)));
            return;
        }
        const std::string instead = checker_.filled_template(listing, result.findings[0]);
        if (instead.empty()) return;
        Listing reworded;
        reworded.fields.push_back({"description", instead});
        const CheckResult& again = checker_.check(reworded);
        if (!again.findings.empty()) {
            fault(example,
                  fmt::format("the suggested wording '{}' does not pass: {}", instead, told(book_, reworded, again)));
        }
    }

    void prove_passed(const ProofText& example) {
        ++report_.examples;
        const Listing listing = listing_of(example);
        const CheckResult& result = checker_.check(listing);
        if (!result.findings.empty())
            fault(example, fmt::format("wanted nothing, found {}", told(book_, listing, result)));
    }

    const RuleBook& book_;
    const RuleInfo& rule_;
    ProofReport& report_;
    Checker checker_;
};

}  // namespace

ProofReport prove(const RuleBook& book, const std::string& rule) {
    ProofReport report;
    for (const RuleInfo& info : book.rules()) {
        if (rule.empty() || info.id == rule) Prover(book, info, report).prove();
    }
    return report;
}

}  // namespace v0
}  // namespace grainside
