#include "check_totals.h"

#include <fmt/format.h>

#include <cstddef>
#include <iterator>
#include <string_view>

namespace grainside::tools {

void CheckTotals::add(const CheckResult& result, const Conceded* conceded) {
    ++listings_;
    claims_ += result.claim_count;
    const std::size_t stand = conceded == nullptr ? 0 : conceded->count;
    conceded_ += stand;
    if (result.findings.size() > stand) ++with_findings_;
    for (std::size_t at = 0; at < result.findings.size(); ++at) {
        if (conceded != nullptr && conceded->stands(at)) continue;
        ++of_grade_[static_cast<std::size_t>(result.findings[at].grade)];
    }
}

void CheckTotals::add(const CheckTotals& others) noexcept {
    listings_ += others.listings_;
    with_findings_ += others.with_findings_;
    claims_ += others.claims_;
    conceded_ += others.conceded_;
    for (std::size_t grade = 0; grade < of_grade_.size(); ++grade) of_grade_[grade] += others.of_grade_[grade];
}

Grade CheckTotals::worst() const noexcept {
    std::size_t grade = 0;
    while (grade + 1 < of_grade_.size() && of_grade_[grade] == 0) ++grade;
    return static_cast<Grade>(grade);
}

void CheckTotals::append_text(std::string& out) const {
    if (listings_ < 2) return;
    auto to = std::back_inserter(out);
    fmt::format_to(to, "{} listings, {} with findings", listings_, with_findings_);
    std::string_view separator = ": ";
    for (std::size_t grade = 0; grade < of_grade_.size(); ++grade) {
        if (of_grade_[grade] == 0) continue;
        fmt::format_to(to, "{}{} {}", separator, of_grade_[grade], name_of(static_cast<Grade>(grade)));
        separator = ", ";
    }
    if (conceded_ != 0) fmt::format_to(to, "; {} conceded", conceded_);
    fmt::format_to(to, "; {} {}\n\n", claims_, claims_ == 1 ? "claim" : "claims");
}

}  // namespace grainside::tools
