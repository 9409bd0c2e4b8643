#include "desk/checked_text.h"

#include <algorithm>
#include <cstdint>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "desk/record_lines.h"
#include "report/verdict_facts.h"
#include "verdict/letter_case.h"

namespace grainside::desk {

using report::JsonWriter;

CheckedText::CheckedText(const RuleBook& book, const Listing& listing, CheckOptions options, const Rewording* rewording)
    : book_(book), rewording_(rewording), checker_(book, std::move(options)), result_(&checker_.check(listing)) {
    for (const Field& field : listing.fields) {
        texts_.push_back(field.text);
        places_.emplace_back(field.text);
    }
    const RecordWriter writer(book);
    writer.write_findings(listing, *result_, checker_, finding_lines_);
    writer.write_claims(listing, *result_, claim_lines_);
    finding_records_ = records_in(finding_lines_);
    claim_records_ = records_in(claim_lines_);
}

Grade CheckedText::worst() const noexcept {
    Grade worst = Grade::consistent;
    for (const Finding& finding : result_->findings) worst = std::min(worst, finding.grade);
    return worst;
}

void CheckedText::write_field(JsonWriter& json, std::size_t field) const {
    json.key("findings");
    json.begin_array();
    for (std::size_t at = 0; at < result_->findings.size(); ++at) {
        if (result_->mentions[result_->findings[at].claim].field == field) write_finding(json, at);
    }
    json.end_array();
    json.key("claims");
    json.begin_array();
    auto record = claim_records_.begin();
    for (const Claim& claim : result_->mentions) {
        if (!is_claim_kind(claim.kind)) continue;
        if (claim.field == field) write_claim(json, claim, *record);
        ++record;
    }
    json.end_array();
}

void CheckedText::write_at(JsonWriter& json, std::size_t field, std::size_t start, std::size_t end) const {
    json.key("at");
    json.begin_array();
    json.value(std::uint64_t{places_[field].units_at(start)});
    json.value(std::uint64_t{places_[field].units_at(end)});
    json.end_array();
}

void CheckedText::write_finding(JsonWriter& json, std::size_t at) const {
    const Finding& finding = result_->findings[at];
    const std::size_t field = result_->mentions[finding.claim].field;
    const RuleInfo& rule = book_.rules()[finding.rule];
    write_record(json, finding_records_[at], [&](JsonWriter& more) {
        write_at(more, field, finding.start, finding.end);
        more.member("title", std::string_view(rule.title));
        write_cited(more, book_, rule.sources);
        write_edit(more, field, finding.start, finding.end, finding.rule);
    });
}

void CheckedText::write_claim(JsonWriter& json, const Claim& claim, std::string_view record) const {
    write_record(json, record, [&](JsonWriter& more) {
        write_at(more, claim.field, claim.start, claim.end);
        more.member("says_name", std::string_view(said_name(book_, claim)));
    });
}

namespace {

// The one of `all` on these words; of several that of `rule`. nullptr: there is none.
template <typename One>
const One* on_words(const std::vector<One>& all, std::size_t field, std::size_t start, std::size_t end,
                    std::uint32_t rule) {
    const One* found = nullptr;
    for (const One& one : all) {
        if (one.field != field || one.start >= end || start >= one.end) continue;
        if (one.rule == rule) return &one;
        if (found == nullptr) found = &one;
    }
    return found;
}

// Whether words go and the wording is but what stands beside them, as an article or the word that begins a sentence
// now: it says nothing by itself.
bool is_beside(const Edit& edit) {
    if (edit.wording.empty() || !edit.left_out.empty()) return !edit.wording.empty();
    if (edit.words.size() <= edit.wording.size()) return false;
    const std::string_view words = edit.words;
    const std::string_view gone = words.substr(0, words.size() - edit.wording.size());
    return verdict::same_letters(edit.wording, words.substr(gone.size())) &&
           (gone.ends_with(", ") || gone.ends_with('/') || gone.ends_with("/ "));
}

constexpr std::size_t kMostReadBytes = 60;

// How the text goes on once words are taken out of it: "Sewn in Vietnam" for a wording "Sewn". To the end of the
// clause, and not far.
std::string read_on(const Edit& edit, std::string_view text) {
    std::string_view rest = text.substr(edit.end);
    rest = rest.substr(0, rest.find_first_of(".,;:!?()|\r\n"));
    if (rest.size() > kMostReadBytes) rest = rest.substr(0, rest.rfind(' ', kMostReadBytes));
    return edit.wording + std::string(rest.substr(0, rest.find_last_not_of(' ') + 1));
}

}  // namespace

void CheckedText::write_edit(JsonWriter& json, std::size_t field, std::size_t start, std::size_t end,
                             std::uint32_t rule) const {
    if (rewording_ == nullptr) return;
    const Edit* const found = on_words(rewording_->edits, field, start, end, rule);
    if (found == nullptr) {
        const Leftover* const left = on_words(rewording_->left, field, start, end, rule);
        if (left != nullptr) json.member("no_edit", std::string_view(left->why_not));
        return;
    }
    json.key("edit");
    json.begin_object();
    write_at(json, found->field, found->start, found->end);
    json.member("words", std::string_view(found->words));
    json.member("wording", std::string_view(found->wording));
    if (is_beside(*found)) {
        json.member("reads", std::string_view(read_on(*found, texts_[found->field])));
    }
    json.optional_member("taken_as_true", found->taken.words);
    json.end_object();
}

std::string said_name(const RuleBook& book, const Claim& claim) {
    std::string name(book.concept_wording(claim.says));
    if (claim.place != 0) name.append(" ").append(book.concept_wording(claim.place));
    return name;
}

void write_cited(JsonWriter& json, const RuleBook& book, std::span<const std::uint32_t> sources) {
    // Two entries of the book may be told in the same words, as two rules of one law: those stand once.
    std::set<std::string> told;
    std::vector<std::uint32_t> each;
    for (const std::uint32_t index : sources) {
        if (told.insert(report::cited(book.sources()[index])).second) each.push_back(index);
    }
    write_list(json, "cited", each, [&](std::uint32_t index) {
        const SourceInfo& source = book.sources()[index];
        json.begin_object();
        json.member("id", std::string_view(source.id));
        json.member("cite", std::string_view(source.cite));
        if (source.from_memory) {
            json.key("from_memory");
            json.value_bool(true);
        }
        json.end_object();
    });
}

}  // namespace grainside::desk
