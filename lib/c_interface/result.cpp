// What a check found, one after the other.
#include "c_interface/border.h"
#include "c_interface/checker.h"

using namespace grainside::c_interface;

namespace {

bool has_result(const GrainsideResult* result) {
    return result != nullptr && result->result != nullptr;
}

std::string_view field_text(const GrainsideResult& result, const grainside::Claim& claim) {
    return result.kept.listing().fields[claim.field].text;
}

}  // namespace

GrainsideText grainside_result_listing(const GrainsideResult* result) {
    return has_result(result) ? text_of(result->kept.listing().id) : GrainsideText{};
}

size_t grainside_result_claim_count(const GrainsideResult* result) {
    return has_result(result) ? result->claims.size() : 0;
}

size_t grainside_result_finding_count(const GrainsideResult* result) {
    return has_result(result) ? result->result->findings.size() : 0;
}

size_t grainside_result_fields_left_out(const GrainsideResult* result) {
    return has_result(result) ? result->result->fields_too_long : 0;
}

GrainsideGrade grainside_result_worst(const GrainsideResult* result) {
    auto worst = grainside::Grade::consistent;
    if (has_result(result)) {
        for (const grainside::Finding& finding : result->result->findings) worst = std::min(worst, finding.grade);
    }
    return grade_of(worst);
}

GrainsideStatus grainside_result_claim(const GrainsideResult* result, size_t index, GrainsideClaim* claim) {
    if (claim == nullptr || index >= grainside_result_claim_count(result)) return grainside_bad_call;
    const grainside::Claim& said = result->result->mentions[result->claims[index]];
    *claim = {text_of(result->kept.listing().fields[said.field].name),
              said.start,
              said.end,
              text_of(field_text(*result, said).substr(said.start, said.end - said.start)),
              text_of(name_of(said.part)),
              text_of(name_of(said.kind)),
              text_of(result->book->rules.concept_name(said.says)),
              said.negated,
              said.hedged};
    return grainside_ok;
}

GrainsideStatus grainside_result_finding(const GrainsideResult* result, size_t index, GrainsideFinding* finding) {
    if (finding == nullptr || index >= grainside_result_finding_count(result)) return grainside_bad_call;
    return guarded([&] {
        const grainside::RuleBook& book = result->book->rules;
        const grainside::Finding& found = result->result->findings[index];
        const grainside::Claim& claim = result->result->mentions[found.claim];
        const grainside::RuleInfo& rule = book.rules()[found.rule];
        std::optional<std::string>& instead = result->say_instead[index];
        if (!instead) instead = result->checker.say_instead(result->kept.listing(), found);
        *finding = {grade_of(found.grade),
                    text_of(result->kept.listing().fields[claim.field].name),
                    found.start,
                    found.end,
                    text_of(field_text(*result, claim).substr(found.start, found.end - found.start)),
                    text_of(name_of(claim.part)),
                    text_of(name_of(claim.kind)),
                    text_of(book.concept_name(claim.says)),
                    text_of(rule.id),
                    text_of(rule.because),
                    text_of(*instead),
                    text_of(rule.remedy)};
        return grainside_ok;
    });
}

GrainsideStatus grainside_result_finding_records(const GrainsideResult* result, GrainsideText* records) {
    if (records != nullptr) *records = {};
    if (records == nullptr || !has_result(result)) return grainside_bad_call;
    return guarded([&] {
        result->finding_records.clear();
        result->book->writer.write_findings(result->kept.listing(), *result->result, result->checker,
                                            result->finding_records);
        *records = text_of(result->finding_records);
        return grainside_ok;
    });
}

GrainsideStatus grainside_result_claim_records(const GrainsideResult* result, GrainsideText* records) {
    if (records != nullptr) *records = {};
    if (records == nullptr || !has_result(result)) return grainside_bad_call;
    return guarded([&] {
        result->claim_records.clear();
        result->book->writer.write_claims(result->kept.listing(), *result->result, result->claim_records);
        *records = text_of(result->claim_records);
        return grainside_ok;
    });
}
