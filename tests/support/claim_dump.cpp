#include "support/claim_dump.h"

#include <fmt/format.h>

namespace grainside::support {

namespace {

std::string quoted(const Listing& listing, std::uint32_t field, std::uint32_t start, std::uint32_t end) {
    return fmt::format("'{}'", listing.fields[field].text.substr(start, end - start));
}

}  // namespace

std::string dump_claims(const RuleBook& book, const Listing& listing, const CheckResult& result) {
    std::string text;
    for (const Claim& claim : result.mentions) {
        if (!is_claim_kind(claim.kind)) continue;
        if (!text.empty()) text += '\n';
        text += fmt::format("{} {} {} ", name_of(claim.kind), book.concept_name(claim.says), name_of(claim.part));
        if (claim.negated) text += "denied ";
        if (claim.hedged) text += "hedged ";
        if (claim.called != 0) text += fmt::format("called={} ", book.concept_name(claim.called));
        if (claim.place != 0) text += fmt::format("place={} ", book.concept_name(claim.place));
        if (claim.quantity) {
            text += fmt::format("quantity={:g}", claim.quantity->low);
            if (claim.quantity->low != claim.quantity->high) text += fmt::format("..{:g}", claim.quantity->high);
            text += fmt::format(" {} ", name_of(claim.quantity->unit));
        }
        text += quoted(listing, claim.field, claim.start, claim.end);
    }
    return text;
}

std::string dump_findings(const RuleBook& book, const Listing& listing, const CheckResult& result) {
    std::string text;
    for (const Finding& finding : result.findings) {
        if (!text.empty()) text += '\n';
        text += fmt::format("{} {} {}", name_of(finding.grade), book.rules()[finding.rule].id,
                            quoted(listing, result.mentions[finding.claim].field, finding.start, finding.end));
    }
    return text;
}

}  // namespace grainside::support
