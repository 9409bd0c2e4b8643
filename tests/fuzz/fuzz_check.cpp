// Any bytes as a listing: checking never crashes, what it finds lies in the text, in order and on character borders,
// and the same text gives the same findings, by the same checker and by a fresh one.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>

#include "grainside/checker.h"
#include "grainside/report.h"

namespace {

using grainside::Checker;
using grainside::CheckResult;
using grainside::Claim;
using grainside::Finding;
using grainside::Listing;
using grainside::RuleBook;

// A longer text only says more of the same; quadratic corners are tests/unit/verdict/hostile_test.cpp's business.
constexpr std::size_t kMaxInputBytes = 4096;

void require(bool holds) {
    if (!holds) std::abort();
}

const RuleBook& book() {
    static const RuleBook built_in = std::move(RuleBook::built_in()).value();
    return built_in;
}

// No byte of a character stands before its first one: a border is no continuation byte, or the byte before it is none
// of a character that still goes on. Invalid bytes are gaps, so a continuation byte that belongs to nothing may begin a
// gap but no claim.
bool is_border(std::string_view text, std::size_t at) {
    return at == text.size() || (static_cast<unsigned char>(text[at]) & 0xC0U) != 0x80U;
}

// A claim ends behind a character: what follows may be a stray byte, which is a gap.
bool ends_behind_a_character(std::string_view text, std::size_t at) {
    if (is_border(text, at)) return true;
    std::size_t first = at - 1;
    while (first > 0 && (static_cast<unsigned char>(text[first]) & 0xC0U) == 0x80U) --first;
    const auto lead = static_cast<unsigned char>(text[first]);
    const std::size_t length = lead < 0x80 ? 1U : lead < 0xE0 ? 2U : lead < 0xF0 ? 3U : 4U;
    return first + length == at;
}

void require_in_place(const Listing& listing, const CheckResult& result) {
    std::uint32_t claims = 0;
    for (std::size_t i = 0; i < result.mentions.size(); ++i) {
        const Claim& claim = result.mentions[i];
        require(claim.field < listing.fields.size());
        const std::string_view text = listing.fields[claim.field].text;
        require(claim.start < claim.end && claim.end <= text.size());
        require(is_border(text, claim.start) && ends_behind_a_character(text, claim.end));
        require(claim.says != 0 && claim.says < book().concept_count() && claim.called < book().concept_count());
        claims += grainside::is_claim_kind(claim.kind) ? 1U : 0U;
        if (i == 0) continue;
        const Claim& before = result.mentions[i - 1];
        require(std::tie(before.field, before.start, before.end, before.kind) <=
                std::tie(claim.field, claim.start, claim.end, claim.kind));
    }
    require(claims == result.claim_count && result.fields_too_long == 0);
    for (std::size_t i = 0; i < result.findings.size(); ++i) {
        const Finding& finding = result.findings[i];
        require(finding.rule < book().rules().size() && finding.claim < result.mentions.size());
        require(finding.against == grainside::kNoClaim || finding.against < result.mentions.size());
        const Claim& claim = result.mentions[finding.claim];
        require(finding.start == claim.start && finding.end >= claim.end &&
                finding.end <= listing.fields[claim.field].text.size());
        if (i == 0) continue;
        const Finding& before = result.findings[i - 1];
        const std::uint32_t field_before = result.mentions[before.claim].field;
        require(std::tie(field_before, before.start) < std::tie(claim.field, finding.start));  // one finding per cause
    }
}

std::string records_of(Checker& checker, const Listing& listing) {
    static const grainside::RecordWriter writer(book());
    const CheckResult& result = checker.check(listing);
    require_in_place(listing, result);
    std::string records;
    writer.write_claims(listing, result, records);
    writer.write_findings(listing, result, checker, records);
    grainside::write_view(book(), listing, result, checker, {}, records);
    return records;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size > kMaxInputBytes) return 0;
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);
    // The whole as each kind of field, and cut at its middle into an attribute's name and value.
    Listing listing;
    listing.id = "fuzz";
    const std::string attribute = "additionalProperty." + std::string(bytes.substr(0, size / 2));
    listing.fields = {{"name", bytes},
                      {"description", bytes},
                      {"material", bytes},
                      {"category", bytes},
                      {attribute, bytes.substr(size / 2)}};
    static Checker kept(book());
    const std::string first = records_of(kept, listing);
    require(records_of(kept, listing) == first);
    Checker fresh(book());
    require(records_of(fresh, listing) == first);
    return 0;
}
