#include "verdict/said_again.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <initializer_list>

namespace grainside::verdict {

namespace {

constexpr std::size_t kMostNames = 64;

bool is_name(const Claim& claim) {
    return claim.kind == Kind::material || claim.kind == Kind::species || claim.kind == Kind::grain;
}

constexpr std::uint32_t bits_of(std::initializer_list<Mark> marks) {
    std::uint32_t bits = 0;
    for (const Mark mark : marks) bits |= static_cast<std::uint32_t>(mark);
    return bits;
}

// Gives the same thing the same name.
bool says_again(const Claim& again, const Claim& name) {
    // Those that make the name say something else.
    constexpr std::uint32_t kTelling = bits_of({Mark::imitation, Mark::look, Mark::likened, Mark::blend, Mark::coated,
                                                Mark::listed, Mark::before_word, Mark::before_material});
    return again.sentence != name.sentence && again.says == name.says && again.called == name.called &&
           again.kind == name.kind && again.negated == name.negated && again.hedged == name.hedged &&
           ((again.marks ^ name.marks) & kTelling) == 0 && of_one_thing(again, name);
}

}  // namespace

void flag_said_again(std::span<const Claim> claims, std::vector<Finding>& findings) {
    std::array<std::uint32_t, kMostNames> names{};  // indices into findings
    std::size_t count = 0;
    for (std::uint32_t i = 0; i < findings.size() && count < names.size(); ++i) {
        if (findings[i].basis == Basis::cross_check && is_name(claims[findings[i].claim])) names[count++] = i;
    }
    if (count == 0) return;
    const std::size_t before = findings.size();
    std::size_t next = 0;
    for (std::uint32_t i = 0; i < claims.size(); ++i) {
        Grade own = Grade::consistent;
        for (; next < before && findings[next].claim <= i; ++next) {
            if (findings[next].claim == i) own = std::min(own, findings[next].grade);
        }
        if (!is_name(claims[i])) continue;
        for (std::size_t k = 0; k < count; ++k) {
            const Finding& found = findings[names[k]];
            if (own <= found.grade || !says_again(claims[i], claims[found.claim])) continue;
            // 'Outer: split pigskin' tells what the title 'Pigskin wallet' does not.
            if (found.against != kNoClaim && claims[found.against].sentence == claims[i].sentence) continue;
            Finding again = found;
            again.claim = i;
            again.start = claims[i].start;
            again.end = claims[i].end;
            findings.push_back(again);
            break;
        }
    }
}

}  // namespace grainside::verdict
