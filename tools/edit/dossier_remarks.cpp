#include "edit/dossier_remarks.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <tuple>
#include <utility>

#include "edit/dossier_places.h"
#include "edit/listing_remarks.h"
#include "evidence/dossier_data.h"
#include "grainside/dossier_report.h"
#include "grainside/judge.h"
#include "grainside/reword.h"
#include "report/concession_text.h"
#include "report/demand_text.h"
#include "report/evidence_text.h"
#include "report/verdict_facts.h"

namespace grainside::tools::edit {
namespace {

constexpr std::size_t kMostToldReadings = 6;  // as the views show

Result<Dossier> parse(const DossierDocument& document, const CheckContext& context, std::string text) {
    return Dossier::parse(document.name, std::move(text), document.folder, *context.book->evidence,
                          {.today = context.today});
}

JudgeOptions judge_options(const CheckContext& context) {
    JudgeOptions options;
    options.check = context.options;
    // Without a day in the call, that on which the listing was captured.
    options.check.on = context.asked_on;
    options.today = context.today;
    return options;
}

class DossierRemarks {
public:
    DossierRemarks(const DossierDocument& document, const CheckContext& context, const Dossier& dossier)
        : document_(document),
          context_(context),
          told_{context.book->rules, *context.book->evidence, dossier},
          judge_(context.book->rules, *context.book->evidence, judge_options(context)) {}

    std::vector<Remark> read() {
        for (const Issue& issue : told_.dossier.warnings()) remarks_.push_back(remark_of(issue, document_.places));
        const Judgement& judgement =
            told_.dossier.listing() != nullptr ? judge_.judge(told_.dossier) : judge_.identify(told_.dossier);
        if (judgement.check != nullptr) add_verdicts(judgement);
        for (const PartJudgement& part : judgement.parts) add_odd_readings(part);
        return std::move(remarks_);
    }

private:
    void add_verdicts(const Judgement& judgement) {
        const Listing& listing = *told_.dossier.listing();
        places_.emplace(document_.places, told_.dossier);
        std::optional<ConcessionLedger> ledger;
        if (context_.agreed != nullptr) ledger.emplace(*context_.agreed, context_.today);
        const Conceded* conceded = ledger ? &ledger->of_verdicts(context_.book->rules, listing, judgement) : nullptr;
        std::vector<std::size_t> order(judgement.verdicts.size());
        for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
        const auto place = [&](std::size_t i) {
            const Claim& claim = judgement.check->mentions[judgement.verdicts[i].claim];
            return std::tuple(claim.field, claim.start, i);
        };
        std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return place(a) < place(b); });
        for (const std::size_t at : order) {
            if (judgement.verdicts[at].grade != Grade::consistent) add_verdict(judgement, conceded, at);
        }
    }

    void add_verdict(const Judgement& judgement, const Conceded* conceded, std::size_t at) {
        const Verdict& verdict = judgement.verdicts[at];
        const Listing& listing = *told_.dossier.listing();
        const Claim& claim = judgement.check->mentions[verdict.claim];
        const std::string_view words = listing.fields[claim.field].text.substr(claim.start, claim.end - claim.start);
        FoundWords found;
        found.words = shown_words(words);
        found.grade = verdict.grade;
        found.because = verdict.because;
        found.say_instead = verdict.say_instead;
        found.remedy = verdict.remedy;
        if (verdict.grade == Grade::unsupported) {
            found.demands = report::demands_line(told_.book, claim.says, verdict.grade);
        }
        Remark remark;
        remark.span = places_->find(claim.field, claim.start, claim.end);
        remark.severity = severity_of(verdict.grade);
        remark.code = rule_of(told_.book, *judgement.check, verdict);
        remark.message = message_of(found);
        remark.told.heading = found.words + ": " + std::string(name_of(verdict.grade));
        remark.told.add("because", verdict.because);
        remark.told.add("say instead", found.say_instead);
        remark.told.add("what to do", found.remedy);
        remark.told.add("proof", found.demands);
        remark.told.add("belief", report::belief_text(verdict));
        for (const LimitResult& limit : verdict.limits) remark.told.add("limit", report::limit_text(told_, limit));
        add_readings(verdict, remark);
        for (const std::string& change : verdict.would_change) remark.told.add("changes", change);
        for (const std::uint32_t source : report::sources_of(told_, judgement, verdict)) {
            remark.told.add("source", report::cited(told_.book.sources()[source]));
        }
        remark.told.add("rule", remark.code);
        if (report::concession_of(conceded, at) != nullptr) {
            remark.told.add(std::string(report::concession_label(*conceded, at)),
                            report::concession_line(*conceded, at));
        }
        if (conceded != nullptr && conceded->stands(at)) {
            remark.severity = Severity::hint;
        } else if (!remark.code.empty()) {
            remark.concedable = ConcessionKey{remark.code, std::string(listing.id), std::string(words)};
        }
        remarks_.push_back(std::move(remark));
    }

    void add_readings(const Verdict& verdict, Remark& remark) {
        const std::size_t shown = std::min(verdict.readings.size(), kMostToldReadings);
        for (std::size_t i = 0; i < shown; ++i) {
            const WeighedEvidence& evidence = verdict.readings[i];
            const std::string line = report::reading_line(told_, evidence.part, evidence.reading);
            const std::string text = line + " (" + report::weight_text(evidence.decibans, "it") + ')';
            remark.told.add("reading", text);
            if (const auto span = span_of_reading(evidence.part, evidence.reading)) {
                remark.related.push_back({*span, shown_words(text)});
            }
        }
    }

    std::optional<TextSpan> span_of_reading(Part part, std::uint32_t reading) const {
        for (const evidence::PartRecord& record : told_.dossier.data().parts) {
            if (record.part != part || reading >= record.readings.size()) continue;
            const std::uint32_t line = record.readings[reading].line;
            if (line != 0) return document_.places.span_of_line(line - 1);
        }
        return std::nullopt;
    }

    // Readings without which a part's others would agree.
    void add_odd_readings(const PartJudgement& part) {
        for (const FrameBelief& frame : part.frames) {
            if (!frame.contradictory) continue;
            for (const std::uint32_t odd : frame.odd_ones) {
                const auto span = span_of_reading(part.part, odd);
                if (!span) continue;
                Remark remark;
                remark.span = *span;
                remark.code = "readings-contradict";
                remark.message = "This reading contradicts the others on the " + std::string(name_of(part.part)) +
                                 ": " + frame.title + ". Without it they agree; was it made and written down right?";
                remarks_.push_back(std::move(remark));
            }
        }
    }

    const DossierDocument& document_;
    const CheckContext& context_;
    DossierContext told_;
    Judge judge_;
    std::optional<DossierPlaces> places_;
    std::vector<Remark> remarks_;
};

// The texts of the listing with one of the edits in them.
std::string with_edit(std::string_view text, const Edit& edit) {
    std::string out(text.substr(0, edit.start));
    return out.append(edit.wording).append(text.substr(edit.end));
}

// Whether the mended YAML is still a dossier, and says what was meant.
bool reads_as_edited(const DossierDocument& document, const CheckContext& context, const Dossier& before,
                     const Edit& edit, const WordingEdit& written) {
    std::string text(document.places.text());
    text.replace(written.span.begin, written.span.end - written.span.begin, written.new_text);
    const auto after = parse(document, context, std::move(text));
    if (!after || after.value().listing() == nullptr) return false;
    const std::vector<Field>& was = before.listing()->fields;
    const std::vector<Field>& is = after.value().listing()->fields;
    if (is.size() != was.size()) return false;
    for (std::size_t i = 0; i < was.size(); ++i) {
        const bool edited = i == edit.field;
        if (is[i].text != (edited ? with_edit(was[i].text, edit) : std::string(was[i].text))) return false;
    }
    return true;
}

}  // namespace

std::vector<Remark> dossier_remarks(const DossierDocument& document, const CheckContext& context) {
    const auto dossier = parse(document, context, std::string(document.places.text()));
    if (dossier) return DossierRemarks(document, context, dossier.value()).read();
    std::vector<Remark> remarks;
    for (const Issue& issue : dossier.issues()) {
        // A fault of a file that the dossier names is told where the dossier names it.
        Issue here = issue;
        if (here.file != document.name) here.line = 0;
        remarks.push_back(remark_of(here, document.places));
    }
    return remarks;
}

std::vector<WordingEdit> dossier_wordings(const DossierDocument& document, const CheckContext& context,
                                          const TextSpan& where) {
    std::vector<WordingEdit> found;
    const auto dossier = parse(document, context, std::string(document.places.text()));
    if (!dossier || dossier.value().listing() == nullptr) return found;
    const RuleBook& book = context.book->rules;
    Judge judge(book, *context.book->evidence, judge_options(context));
    Reworder reworder(book, judge_options(context).check);
    DossierPlaces places(document.places, dossier.value());
    const auto add = [&](const Edit& edit, Standing standing) {
        const auto span = places.find_exact(edit.field, edit.start, edit.end);
        const auto text = places.written(edit.field, edit.wording);
        if (!span || !text || !where.meets(*span)) return;
        WordingEdit one = wording_edit(edit, standing, *span, *text, book);
        if (reads_as_edited(document, context, dossier.value(), edit, one)) found.push_back(std::move(one));
    };
    const std::vector<Edit>& edits = reworder.reword(dossier.value(), judge).edits;
    for (const Edit& edit : edits) add(edit, standing_of(edit));
    Reworder leaver(book, judge_options(context).check, {.leave_out_all = true});
    const std::vector<Edit> left_out = only_left_out(leaver.reword(dossier.value(), judge).edits, edits);
    for (const Edit& edit : left_out) add(edit, Standing::by_choice);
    return found;
}

}  // namespace grainside::tools::edit
