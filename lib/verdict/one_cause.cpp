#include "verdict/one_cause.h"

#include <algorithm>
#include <tuple>

#include "text/character_reader.h"

namespace grainside::verdict {

namespace {

// In one phrase and of one part; what is said of the whole is said of each part.
bool same_place(const Claim& a, const Claim& b) {
    return a.phrase == b.phrase && (a.part == b.part || a.part == Part::whole || b.part == Part::whole);
}

bool is_identity(const Claim& claim) {
    return claim.kind == Kind::material || claim.kind == Kind::species || claim.kind == Kind::grain;
}

// Nothing but white space, however it is written, or one sign: 'full grain calf', 'calf/leather'.
bool side_by_side(std::string_view between) {
    using text::CharacterKind;
    std::uint32_t spaces = 0;
    std::uint32_t signs = 0;
    text::CharacterReader reader(between);
    for (std::uint32_t at = 0; at < reader.size();) {
        const text::Character character = reader.read(at);
        at = character.end;
        switch (character.kind) {
            case CharacterKind::drop:
            case CharacterKind::mark:
                break;
            case CharacterKind::space:
            case CharacterKind::newline:
            case CharacterKind::inline_tag:
                ++spaces;
                break;
            default:
                ++signs;
        }
        if (signs > 1 || (signs > 0 && spaces > 0)) return false;
    }
    return true;
}

// 'full grain calf': one material, named by two claims side by side. Words that stand apart are each to be mended.
bool one_breath(const Finding& last, const Finding& next, std::span<const Field> fields,
                std::span<const Claim> claims) {
    const Claim& before = claims[last.claim];
    const Claim& behind = claims[next.claim];
    if (before.field != behind.field || !same_place(before, behind)) return false;
    const bool is_alike =
        last.rule == next.rule || (last.grade == next.grade && is_identity(before) && is_identity(behind));
    if (!is_alike || next.start <= last.end) return is_alike;
    return side_by_side(fields[before.field].text.substr(last.end, next.start - last.end));
}

}  // namespace

void keep_one_per_cause(std::span<const Field> fields, std::span<const Claim> claims, std::vector<Finding>& findings) {
    const auto field = [&](const Finding& finding) { return claims[finding.claim].field; };
    std::sort(findings.begin(), findings.end(), [&](const Finding& a, const Finding& b) {
        return std::tuple(field(a), a.start, a.grade, b.end, a.rule, a.claim) <
               std::tuple(field(b), b.start, b.grade, a.end, b.rule, b.claim);
    });
    // Sweep: `kept` grows at its end; a newcomer meets only those that still reach its start.
    const auto stronger = [](const Finding& a, const Finding& b) {
        return std::tuple(a.grade, b.end - b.start, a.rule) < std::tuple(b.grade, a.end - a.start, b.rule);
    };
    std::size_t kept = 0;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        Finding finding = findings[i];
        bool beaten = false;
        while (kept > 0) {
            const Finding& last = findings[kept - 1];
            if (field(last) != field(finding) || last.end <= finding.start) break;
            if (!stronger(finding, last)) {
                beaten = true;
                break;
            }
            --kept;
        }
        const bool again = kept > 0 && one_breath(findings[kept - 1], finding, fields, claims);
        if (!beaten && !again) findings[kept++] = finding;
    }
    findings.resize(kept);
    // A phrase's findings stand together, so that only neighbours are looked at.
    const auto adds_nothing = [&](const Finding& finding) {
        const Claim& praise = claims[finding.claim];
        if (praise.kind != Kind::quality || finding.grade != Grade::vague) return false;
        const auto at = static_cast<std::size_t>(&finding - findings.data());
        const auto worse = [&](std::size_t i) { return findings[i].grade < finding.grade; };
        const auto in_phrase = [&](std::size_t i) { return claims[findings[i].claim].phrase == praise.phrase; };
        for (std::size_t i = at; i-- > 0 && in_phrase(i);) {
            if (worse(i) && same_place(praise, claims[findings[i].claim])) return true;
        }
        for (std::size_t i = at + 1; i < findings.size() && in_phrase(i); ++i) {
            if (worse(i) && same_place(praise, claims[findings[i].claim])) return true;
        }
        return false;
    };
    // What is asked looks at its neighbours, so nothing may move before all are asked: the useless become empty first.
    for (Finding& finding : findings) {
        if (adds_nothing(finding)) finding.end = finding.start;
    }
    findings.erase(std::remove_if(findings.begin(), findings.end(),
                                  [](const Finding& finding) { return finding.end == finding.start; }),
                   findings.end());
}

}  // namespace grainside::verdict
