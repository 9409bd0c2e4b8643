#include "reading_lines.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

#include "rules/book_data.h"

namespace grainside::scoring {

namespace {

// Words of a claim are short; a finding on a list of percentages can be as long as the list.
constexpr std::size_t kAllOfIt = kMaxFieldBytes;

std::string words_at(const Listing& listing, std::uint32_t field, std::uint32_t start, std::uint32_t end) {
    return fmt::format("{}@{} {}", listing.fields[field].name, start,
                       quoted_line(listing.fields[field].text.substr(start, end - start), kAllOfIt));
}

std::string marks_of(const Claim& claim) {
    std::string names;
    for (int bit = 0; bit < kMarkCount; ++bit) {
        const auto mark = static_cast<Mark>(1U << static_cast<unsigned>(bit));
        if (claim.has(mark)) names += fmt::format("{}{}", names.empty() ? "" : ",", name_of(mark));
    }
    return names;
}

// How many lines above is the next with the same number; 0 = none of them.
template <typename Number>
std::size_t lines_up(const CheckResult& result, std::size_t at, Number number) {
    const Claim& claim = result.mentions[at];
    for (std::size_t up = 1; up <= at; ++up) {
        if (number(result.mentions[at - up]) == number(claim)) return up;
    }
    return 0;
}

}  // namespace

std::string quoted_line(std::string_view text, std::size_t most) {
    const bool whole = text.size() <= most;
    if (!whole) {
        while (most > 0 && (static_cast<unsigned char>(text[most]) & 0xC0U) == 0x80) --most;
        text = text.substr(0, most);
    }
    std::string line = "\"";
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x20 || byte == 0x7f || c == '\\') {
            line += fmt::format("\\x{:02x}", byte);
        } else {
            line += c;
        }
    }
    line += whole ? "\"" : "\"...";
    return line;
}

std::string listing_line(const RuleBook& book, const CheckResult& result) {
    std::string line =
        fmt::format("is {}, {}", book.data().vocabulary.categories[result.category].name, name_of(result.main_part));
    if (result.fields_too_long != 0) line += fmt::format(", {} fields not read", result.fields_too_long);
    return line;
}

std::string claim_line(const RuleBook& book, const Listing& listing, const CheckResult& result, std::size_t at) {
    const Claim& claim = result.mentions[at];
    std::string line = fmt::format("{} {} {} {}", words_at(listing, claim.field, claim.start, claim.end),
                                   name_of(claim.kind), book.concept_name(claim.says), name_of(claim.part));
    if (claim.family != 0) line += fmt::format("/{}", claim.family);
    if (claim.negated) line += " denied";
    if (claim.hedged) line += " hedged";
    if (claim.look_alike) line += " look-alike";
    if (claim.called != 0) line += fmt::format(" called={}", book.concept_name(claim.called));
    if (claim.place != 0) line += fmt::format(" place={}", book.concept_name(claim.place));
    if (claim.quantity) {
        line += fmt::format(" quantity={}", claim.quantity->low);
        if (claim.quantity->high != claim.quantity->low) line += fmt::format("..{}", claim.quantity->high);
        if (claim.quantity->unit != Unit::none) line += fmt::format("-{}", name_of(claim.quantity->unit));
    }
    if (claim.of_total != 0) line += fmt::format(" of-total={:.6g}%", claim.of_total);
    if (claim.marks != 0) line += " marks=" + marks_of(claim);
    if (claim.list_end != 0) line += fmt::format(" list-to={}", claim.list_end);
    const std::size_t phrase = lines_up(result, at, [](const Claim& other) { return other.phrase; });
    const std::size_t sentence = lines_up(result, at, [](const Claim& other) { return other.sentence; });
    if (phrase != 0) line += fmt::format(" phrase^{}", phrase);
    // What stands in one phrase stands in one sentence, unless the line says otherwise.
    if (sentence != phrase) line += fmt::format(" sentence^{}", sentence);
    return line;
}

std::string finding_line(const RuleBook& book, const Listing& listing, const CheckResult& result,
                         const Finding& finding, const Checker& checker) {
    const RuleInfo& rule = book.rules()[finding.rule];
    const Claim& claim = result.mentions[finding.claim];
    std::string line =
        fmt::format("{} {}", name_of(finding.grade), words_at(listing, claim.field, finding.start, finding.end));
    if (finding.basis != rule.basis) line += fmt::format(" {}", name_of(finding.basis));
    if (finding.start != claim.start) line += fmt::format(" of {}", claim.start);
    if (finding.against != kNoClaim) {
        const Claim& against = result.mentions[finding.against];
        line += " against " + words_at(listing, against.field, against.start, against.end);
    }
    const std::string instead = checker.say_instead(listing, finding);
    if (!instead.empty()) line += " instead " + quoted_line(instead, kAllOfIt);
    return line;
}

}  // namespace grainside::scoring
