// A graded finding on a listing's words.
#ifndef GRAINSIDE_FINDING_H
#define GRAINSIDE_FINDING_H

#include <cstdint>
#include <optional>
#include <string_view>

namespace grainside {
inline namespace v0 {

// Worst first, so that `<` reads as 'worse than'.
enum class Grade : std::uint8_t { contradicted, misleading, unsupported, inconclusive, vague, consistent };
std::string_view name_of(Grade grade) noexcept;
std::optional<Grade> grade_named(std::string_view name) noexcept;

// What a finding stands on: the words alone, two statements of the listing that disagree, or a reading.
enum class Basis : std::uint8_t { wording, cross_check, evidence };
std::string_view name_of(Basis basis) noexcept;

inline constexpr std::uint32_t kNoClaim = 0xffffffff;

struct Finding {
    std::uint32_t rule = 0;            // index into RuleBook::rules()
    std::uint32_t claim = 0;           // index into CheckResult::mentions: the words that are graded
    std::uint32_t against = kNoClaim;  // the statement that it disagrees with, for a cross-check
    std::uint32_t start = 0;           // half-open byte span in the field of `claim`
    std::uint32_t end = 0;
    Grade grade = Grade::vague;
    Basis basis = Basis::wording;
};

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_FINDING_H
