// Findings and claims of a listing as the page marks them. Thread-safe for distinct objects.
#ifndef GRAINSIDE_TOOLS_DESK_CHECKED_TEXT_H
#define GRAINSIDE_TOOLS_DESK_CHECKED_TEXT_H

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "desk/desk_books.h"
#include "grainside/checker.h"
#include "grainside/report.h"
#include "grainside/reword.h"
#include "report/json_writer.h"
#include "utf16_places.h"

namespace grainside::desk {

// A listing, checked. The records are those of design section 9 with these members besides, places in UTF-16 units of
// the field: "at":[start,end]; of a claim "says_name"; of a finding "title" (of its rule), "cited":[{"id","cite",
// "from_memory"?}] and, where one is known that fits its place,
// "edit":{"at","words","wording","reads"?,"taken_as_true"?}, else where the rewording knows why, "no_edit".
class CheckedText {
public:
    // `rewording` is of the same listing and options, or nullptr: no edits. What is passed outlives the object.
    CheckedText(const RuleBook& book, const Listing& listing, CheckOptions options, const Rewording* rewording);

    const CheckResult& result() const noexcept { return *result_; }
    Grade worst() const noexcept;

    // "findings":[...],"claims":[...] of one field.
    void write_field(report::JsonWriter& json, std::size_t field) const;
    // "at":[start,end]
    void write_at(report::JsonWriter& json, std::size_t field, std::size_t start, std::size_t end) const;
    // "edit":{...} of these words, as far as one is known, or "no_edit":"why"; of several that of `rule`.
    void write_edit(report::JsonWriter& json, std::size_t field, std::size_t start, std::size_t end,
                    std::uint32_t rule = kNoRule) const;

private:
    void write_finding(report::JsonWriter& json, std::size_t at) const;
    void write_claim(report::JsonWriter& json, const Claim& claim, std::string_view record) const;

    const RuleBook& book_;
    const Rewording* rewording_;
    Checker checker_;
    const CheckResult* result_;
    std::vector<std::string_view> texts_;     // by field
    std::vector<tools::Utf16Places> places_;  // by field
    std::string finding_lines_, claim_lines_;
    std::vector<std::string_view> finding_records_, claim_records_;
};

// Words for what a claim says, with its place: "made in Italy".
std::string said_name(const RuleBook& book, const Claim& claim);

// "cited":[{"id","cite","from_memory"?}] of indices into RuleBook::sources().
void write_cited(report::JsonWriter& json, const RuleBook& book, std::span<const std::uint32_t> sources);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_CHECKED_TEXT_H
