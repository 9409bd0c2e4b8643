#include "left_over_view.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <string_view>

#include "report/plain_lines.h"
#include "report/view_text.h"

namespace grainside::tools {
namespace {

constexpr std::size_t kWidth = 80;
constexpr std::size_t kLabelsAt = 6;
constexpr std::size_t kValuesAt = 19;
constexpr std::size_t kMostCells = 60;

void append_value(std::string& out, std::string_view label, std::string_view value) {
    if (value.empty()) return;
    out.append(kLabelsAt, ' ').append(label).append(kValuesAt - kLabelsAt - label.size(), ' ');
    report::append_wrapped(out, value, kValuesAt, kWidth);
}

}  // namespace

void append_taken_as_true(const Listing& listing, const Rewording& rewording, std::string& out) {
    const auto any = std::any_of(rewording.edits.begin(), rewording.edits.end(),
                                 [](const Edit& edit) { return !edit.taken.words.empty(); });
    if (!any) return;
    out += report::listing_heading(listing, kWidth) + ", where it disagrees with itself, taken as true:\n";
    for (const Edit& edit : rewording.edits) {
        if (edit.taken.words.empty()) continue;
        const auto field_name = [&](std::uint32_t field) {
            return report::one_line(listing.fields[field].name, kMostCells);
        };
        out += "  ";
        report::append_wrapped(
            out,
            fmt::format("'{}' in {}, so that '{}' in {} {}", report::one_line(edit.taken.words, kMostCells),
                        field_name(edit.taken.field), report::one_line(edit.words, kMostCells), field_name(edit.field),
                        edit.wording.empty() ? std::string("goes")
                                             : fmt::format("becomes '{}'", report::one_line(edit.wording, kMostCells))),
            4, kWidth);
    }
    out += '\n';
}

void append_left_over(const RuleBook& book, const Listing& listing, const Rewording& rewording, std::string& out) {
    if (rewording.left.empty()) return;
    out += report::listing_heading(listing, kWidth) + ", left for a person:\n";
    for (const Leftover& left : rewording.left) {
        const std::string_view grade = name_of(left.grade);
        out.append("  ").append(grade).append(kValuesAt - 2 - grade.size(), ' ');
        report::append_wrapped(out,
                               '\'' + report::one_line(left.words, kMostCells) + "' in " +
                                   report::one_line(listing.fields[left.field].name, kMostCells),
                               kValuesAt, kWidth);
        append_value(out, "because", left.because);
        append_value(out, "no edit", left.why_not);
        append_value(out, "remedy", left.remedy);
        if (left.rule != kNoRule) append_value(out, "rule", book.rules()[left.rule].id);
    }
    out += '\n';
}

void RewordTotals::add(const Rewording& rewording) {
    ++listings;
    edits += rewording.edits.size();
    for (const Leftover& one : rewording.left) ++left[static_cast<std::size_t>(one.grade)];
}

std::string RewordTotals::text() const {
    std::uint64_t all = 0;
    std::string grades;
    for (std::size_t grade = 0; grade < std::size(left); ++grade) {
        if (left[grade] == 0) continue;
        all += left[grade];
        grades += fmt::format("{}{} {}", grades.empty() ? ": " : ", ", left[grade], name_of(static_cast<Grade>(grade)));
    }
    return fmt::format("{}; {} left for a person{}\n", report::counted(edits, "edit", "edits"),
                       report::counted(all, "finding", "findings"), grades);
}

Grade RewordTotals::worst() const noexcept {
    const auto* first = std::find_if(std::begin(left), std::end(left), [](std::uint64_t count) { return count != 0; });
    return first == std::end(left) ? Grade::consistent : static_cast<Grade>(first - std::begin(left));
}

}  // namespace grainside::tools
