#include "edit/listing_remarks.h"

#include <algorithm>
#include <cstdint>
#include <memory>
#include <optional>
#include <string_view>
#include <utility>

#include "edit/field_places.h"
#include "edit/page_edits.h"
#include "fields_left_out.h"
#include "grainside/reword.h"
#include "listing_edits.h"
#include "report/concession_text.h"
#include "report/demand_text.h"
#include "report/plain_lines.h"
#include "report/proof_record.h"
#include "report/rule_facts.h"

namespace grainside::tools::edit {
namespace {

constexpr std::size_t kMostShownCells = 120;
// For marks, which are laid anew while somebody types.
constexpr std::size_t kMostPageBytesRead = std::size_t{4} << 20;

std::string_view words_of(const Listing& listing, std::uint32_t field, std::uint32_t start, std::uint32_t end) {
    return listing.fields[field].text.substr(start, end - start);
}

std::string joined(const std::vector<std::string>& texts) {
    std::string all;
    for (const std::string& text : texts) {
        if (!all.empty()) all += "; ";
        all += text;
    }
    return all;
}

// Ids that the reader made of the name and the number of the record change where a record is added above.
bool has_own_id(const ListingDocument& document, const Listing& listing) {
    return !listing.id.empty() && listing.id != document.name + ':' + std::to_string(listing.record);
}

class ListingRemarks {
public:
    ListingRemarks(const ListingDocument& document, const CheckContext& context)
        : document_(document),
          book_(context.book->rules),
          checker_(book_, context.options),
          page_(document.places.text(), document.name, kMostPageBytesRead),
          fields_(document.places, document.format == InputFormat::html ? &page_ : nullptr) {
        if (context.agreed != nullptr) ledger_.emplace(*context.agreed, context.today);
    }

    std::vector<Remark> read() {
        ListingReader reader =
            ListingReader::from_memory(document_.name, document_.places.text(), {.format = document_.format});
        Listing listing;
        std::vector<Issue> issues;
        for (bool more = true; more;) {
            issues.clear();
            more = reader.next(listing, issues);
            if (more) add(listing, issues);
            for (const Issue& issue : issues) remarks_.push_back(remark_of(issue, document_.places));
        }
        return std::move(remarks_);
    }

private:
    void add(const Listing& listing, std::vector<Issue>& issues) {
        const CheckResult& result = checker_.check(listing);
        if (auto issue = fields_left_out(listing, result.fields_too_long)) issues.push_back(std::move(*issue));
        const Conceded* conceded = ledger_ ? &ledger_->of_findings(book_, listing, result) : nullptr;
        // A catalog has more findings than anybody is shown, and only those are told in full.
        for (std::size_t at = 0; at < result.findings.size(); ++at) {
            if (remarks_.size() < kMostRemarks) {
                add_finding(listing, result, conceded, at);
            } else {
                remarks_.emplace_back().span = {document_.places.text().size(), document_.places.text().size()};
            }
        }
    }

    void add_finding(const Listing& listing, const CheckResult& result, const Conceded* conceded, std::size_t at) {
        const Finding& finding = result.findings[at];
        const Claim& claim = result.mentions[finding.claim];
        const RuleInfo& rule = book_.rules()[finding.rule];
        FoundWords found;
        found.words = shown_words(words_of(listing, claim.field, finding.start, finding.end));
        found.grade = finding.grade;
        found.because = rule.because;
        if (!rule.say_instead.empty()) found.say_instead = checker_.say_instead(listing, finding);
        if (found.say_instead.empty()) found.remedy = rule.remedy;
        found.demands = report::demands_line(book_, claim.says, finding.grade);

        Remark remark;
        remark.span = fields_.find(listing, claim.field, finding.start, finding.end).span;
        remark.severity = severity_of(finding.grade);
        remark.code = rule.id;
        remark.message = message_of(found);
        remark.told.heading = found.words + ": " + std::string(name_of(finding.grade));
        remark.told.add("reads as", reading_of(claim));
        remark.told.add("because", rule.because);
        if (finding.against != kNoClaim) add_statement_against(listing, result.mentions[finding.against], remark);
        remark.told.add("say instead", found.say_instead);
        remark.told.add("what to do", found.remedy);
        remark.told.add("proof", found.demands);
        if (result.proofs != nullptr) {
            remark.told.add("on file", report::filed_line(book_, result, finding.claim, finding.grade));
        }
        remark.told.add("sources", joined(report::cites_of(book_, rule)));
        remark.told.add("markets", report::markets_text(rule));
        remark.told.add("rule", rule.id);
        add_concession(listing, claim, finding, conceded, at, remark);
        remarks_.push_back(std::move(remark));
    }

    std::string reading_of(const Claim& claim) const {
        std::string text(name_of(claim.part));
        text += ": ";
        if (claim.negated) text += "not ";
        return text + std::string(book_.concept_name(claim.says));
    }

    void add_statement_against(const Listing& listing, const Claim& other, Remark& remark) {
        const std::string words = shown_words(words_of(listing, other.field, other.start, other.end));
        remark.related.push_back({fields_.find(listing, other.field, other.start, other.end).span,
                                  "the statement that it disagrees with: '" + words + "'"});
        remark.told.add("against", '\'' + words + "' (" + reading_of(other) + ')');
    }

    void add_concession(const Listing& listing, const Claim& claim, const Finding& finding, const Conceded* conceded,
                        std::size_t at, Remark& remark) {
        if (report::concession_of(conceded, at) != nullptr) {
            const std::string label(report::concession_label(*conceded, at));
            const std::string line = report::concession_line(*conceded, at);
            remark.message += ' ' + label + ' ' + line + '.';
            remark.told.add(label, line);
        }
        if (conceded != nullptr && conceded->stands(at)) {
            remark.severity = Severity::hint;
            return;
        }
        ConcessionKey key;
        key.rule = remark.code;
        key.words = words_of(listing, claim.field, finding.start, finding.end);
        if (has_own_id(document_, listing)) key.listing = listing.id;
        remark.concedable = std::move(key);
    }

    const ListingDocument& document_;
    const RuleBook& book_;
    Checker checker_;
    PageReading page_;
    FieldPlaces fields_;
    std::optional<ConcessionLedger> ledger_;
    std::vector<Remark> remarks_;
};

}  // namespace

std::vector<Remark> listing_remarks(const ListingDocument& document, const CheckContext& context) {
    return ListingRemarks(document, context).read();
}

Standing standing_of(const Edit& edit) {
    if (!edit.taken.words.empty()) return Standing::by_choice;
    return edit.left_out.empty() ? Standing::best : Standing::by_itself;
}

std::vector<Edit> only_left_out(const std::vector<Edit>& edits, const std::vector<Edit>& known) {
    std::vector<Edit> found;
    for (const Edit& edit : edits) {
        const bool is_known = std::any_of(known.begin(), known.end(), [&](const Edit& other) {
            return other.field == edit.field && other.start == edit.start && other.end == edit.end;
        });
        if (!edit.left_out.empty() && !is_known) found.push_back(edit);
    }
    return found;
}

WordingEdit wording_edit(const Edit& edit, Standing standing, const TextSpan& span, std::string new_text,
                         const RuleBook& book) {
    return {span,
            std::move(new_text),
            edit.words,
            edit.wording,
            edit.rule == kNoRule ? std::string() : book.rules()[edit.rule].id,
            edit.left_out,
            standing};
}

std::vector<WordingEdit> listing_wordings(const ListingDocument& document, const CheckContext& context,
                                          const TextSpan& where) {
    const RuleBook& book = context.book->rules;
    ListingReader reader =
        ListingReader::from_memory(document.name, document.places.text(), {.format = document.format});
    Reworder reworder(book, context.options);
    Reworder leaver(book, context.options, {.leave_out_all = true});
    SourcePlaces places;
    PageEdits in_page(document);
    Listing listing;
    std::vector<Issue> issues;
    std::vector<WordingEdit> found;
    while (reader.next(listing, issues)) {
        issues.clear();
        const auto begin = static_cast<std::size_t>(listing.source.start);
        // Of a catalog, only the records at the caret are asked.
        if (!listing.source.bytes.empty() && !where.meets({begin, begin + listing.source.bytes.size()})) continue;
        const auto add = [&](const Edit& edit, Standing standing) {
            Rewording one;
            one.edits.push_back(edit);
            std::vector<SourceEdit> edits = listing_edits(listing, one, places);
            if (edits.empty() && document.format == InputFormat::html) edits = in_page.find(where, listing, edit);
            for (const SourceEdit& at : edits) {
                const TextSpan span{static_cast<std::size_t>(at.start), static_cast<std::size_t>(at.end)};
                if (where.meets(span)) found.push_back(wording_edit(edit, standing, span, at.new_bytes, book));
            }
        };
        const std::vector<Edit>& edits = reworder.reword(listing).edits;
        for (const Edit& edit : edits) add(edit, standing_of(edit));
        const std::vector<Edit> left_out = only_left_out(leaver.reword(listing).edits, edits);
        for (const Edit& edit : left_out) add(edit, Standing::by_choice);
    }
    return found;
}

std::string message_of(const FoundWords& found) {
    std::string text = '\'' + found.words + "' is " + std::string(name_of(found.grade)) + ". " + found.because;
    if (!found.say_instead.empty()) text += " Say instead: '" + found.say_instead + "'.";
    if (!found.remedy.empty()) text += ' ' + found.remedy;
    if (!found.demands.empty()) text += " What " + found.demands + '.';
    return text;
}

std::string shown_words(std::string_view text) {
    return report::one_line(text, kMostShownCells);
}

}  // namespace grainside::tools::edit
