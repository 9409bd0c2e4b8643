// A judge behind its handle, and its last judgement.
#include "grainside/judge.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "c_interface/asked.h"
#include "c_interface/book.h"
#include "c_interface/border.h"
#include "c_interface/issues.h"
#include "grainside/dossier_report.h"
#include "grainside/full_report.h"

using namespace grainside::c_interface;

struct GrainsideJudgement {
    GrainsideJudgement(std::shared_ptr<const SharedBook> shared_book, grainside::EvidenceBook evidence_book,
                       grainside::JudgeOptions options)
        : book(std::move(shared_book)),
          evidence(std::move(evidence_book)),
          judge(book->rules, evidence, std::move(options)) {}

    std::shared_ptr<const SharedBook> book;
    grainside::EvidenceBook evidence;
    grainside::Judge judge;
    std::optional<grainside::Dossier> dossier;
    const grainside::Judgement* judgement = nullptr;  // nullptr before the first dossier

    mutable std::string records;
    mutable std::string report;

    grainside::DossierContext context() const { return {book->rules, evidence, *dossier}; }
};

struct GrainsideJudge {
    // In its place for good: it holds books that refer to one another.
    std::unique_ptr<GrainsideJudgement> last;
};

namespace {

using Read = grainside::Result<grainside::Dossier>;

// `read` is asked for the dossier.
template <typename Reading>
GrainsideStatus judge_dossier(GrainsideJudgement& last, Reading read, const GrainsideJudgement** judgement,
                              GrainsideIssues** issues) {
    last.judgement = nullptr;
    last.records.clear();
    last.report.clear();
    Read dossier = read(last.evidence, grainside::DossierOptions{.today = last.judge.options().today});
    if (!dossier) {
        give_issues(std::move(dossier).issues(), issues);
        return grainside_faults;
    }
    last.dossier.emplace(std::move(dossier).value());
    const grainside::Judgement& judged = last.judge.judge(*last.dossier);
    give_issues(last.dossier->warnings(), issues);
    last.judgement = &judged;
    *judgement = &last;
    return grainside_ok;
}

bool has_judgement(const GrainsideJudgement* judgement) {
    return judgement != nullptr && judgement->judgement != nullptr;
}

void write_report(GrainsideReportForm form, const grainside::FullReport& report, std::string& out) {
    const std::span<const grainside::FullReport> one(&report, 1);
    switch (form) {
        case grainside_report_html:
            return grainside::write_html(one, out);
        case grainside_report_markdown:
            return grainside::write_markdown(one, out);
        case grainside_report_json:
            return grainside::write_json(one, out);
        case grainside_report_csv:
            return grainside::write_csv(one, out);
    }
}

}  // namespace

GrainsideStatus grainside_judge_make(const GrainsideBook* book, const GrainsideCheckOptions* options,
                                     GrainsideText today, GrainsideJudge** judge, GrainsideIssues** issues) {
    if (issues != nullptr) *issues = nullptr;
    if (judge != nullptr) *judge = nullptr;
    if (book == nullptr || judge == nullptr || !is_whole(options) || !is_text(today)) return grainside_bad_call;
    return guarded([&] {
        std::vector<grainside::Issue> faults;
        grainside::JudgeOptions asked;
        asked.check = check_options_of(options, book->shared->rules, faults);
        asked.today = view_of(today);
        require_day(asked.today, faults);
        auto evidence = grainside::EvidenceBook::load(book->shared->rules);
        if (!evidence) faults.insert(faults.end(), evidence.issues().begin(), evidence.issues().end());
        if (!faults.empty()) {
            give_issues(std::move(faults), issues);
            return grainside_faults;
        }
        auto made = std::make_unique<GrainsideJudge>();
        made->last = std::make_unique<GrainsideJudgement>(book->shared, std::move(evidence).value(), std::move(asked));
        *judge = made.release();
        return grainside_ok;
    });
}

void grainside_judge_free(GrainsideJudge* judge) {
    delete judge;
}

GrainsideStatus grainside_judge_file(GrainsideJudge* judge, GrainsideText path, const GrainsideJudgement** judgement,
                                     GrainsideIssues** issues) {
    if (issues != nullptr) *issues = nullptr;
    if (judgement != nullptr) *judgement = nullptr;
    if (judge == nullptr || judgement == nullptr || !is_text(path)) return grainside_bad_call;
    return guarded([&] {
        const auto read = [&](const grainside::EvidenceBook& evidence, const grainside::DossierOptions& options) {
            return grainside::Dossier::read(std::filesystem::path(view_of(path)), evidence, options);
        };
        return judge_dossier(*judge->last, read, judgement, issues);
    });
}

GrainsideStatus grainside_judge_bytes(GrainsideJudge* judge, GrainsideText name, GrainsideText bytes,
                                      GrainsideText folder, const GrainsideJudgement** judgement,
                                      GrainsideIssues** issues) {
    if (issues != nullptr) *issues = nullptr;
    if (judgement != nullptr) *judgement = nullptr;
    if (judge == nullptr || judgement == nullptr || !is_text(name) || !is_text(bytes) || !is_text(folder)) {
        return grainside_bad_call;
    }
    return guarded([&] {
        const auto read = [&](const grainside::EvidenceBook& evidence, const grainside::DossierOptions& options) {
            return grainside::Dossier::parse(std::string(view_of(name)), std::string(view_of(bytes)),
                                             std::filesystem::path(view_of(folder)), evidence, options);
        };
        return judge_dossier(*judge->last, read, judgement, issues);
    });
}

size_t grainside_judgement_verdict_count(const GrainsideJudgement* judgement) {
    return has_judgement(judgement) ? judgement->judgement->verdicts.size() : 0;
}

GrainsideGrade grainside_judgement_worst(const GrainsideJudgement* judgement) {
    return has_judgement(judgement) ? grade_of(judgement->judgement->worst) : grainside_consistent;
}

GrainsideStatus grainside_judgement_verdict(const GrainsideJudgement* judgement, size_t index,
                                            GrainsideVerdict* verdict) {
    if (verdict == nullptr || index >= grainside_judgement_verdict_count(judgement)) return grainside_bad_call;
    const grainside::Verdict& given = judgement->judgement->verdicts[index];
    // There is no verdict without a listing.
    const grainside::Claim& claim = judgement->judgement->check->mentions[given.claim];
    const grainside::Field& field = judgement->dossier->listing()->fields[claim.field];
    *verdict = {grade_of(given.grade),
                text_of(field.name),
                claim.start,
                claim.end,
                text_of(field.text.substr(claim.start, claim.end - claim.start)),
                text_of(name_of(claim.part)),
                text_of(name_of(claim.kind)),
                text_of(judgement->book->rules.concept_name(claim.says)),
                given.holds,
                given.fails,
                given.open,
                text_of(given.because),
                text_of(given.say_instead),
                text_of(given.remedy),
                text_of(given.next_test)};
    return grainside_ok;
}

GrainsideStatus grainside_judgement_records(const GrainsideJudgement* judgement, GrainsideText* records) {
    if (records != nullptr) *records = {};
    if (records == nullptr || !has_judgement(judgement)) return grainside_bad_call;
    return guarded([&] {
        judgement->records.clear();
        grainside::write_judgement_records(judgement->context(), *judgement->judgement, judgement->judge.options(),
                                           judgement->records);
        *records = text_of(judgement->records);
        return grainside_ok;
    });
}

GrainsideStatus grainside_judgement_report(const GrainsideJudgement* judgement, GrainsideReportForm form,
                                           GrainsideText* report) {
    if (report != nullptr) *report = {};
    const bool is_form = form == grainside_report_html || form == grainside_report_markdown ||
                         form == grainside_report_json || form == grainside_report_csv;
    if (report == nullptr || !has_judgement(judgement) || !is_form) return grainside_bad_call;
    return guarded([&] {
        // Its own judge, because asking one again ends what the last judgement refers to.
        grainside::Judge judge(judgement->book->rules, judgement->evidence, judgement->judge.options());
        const auto gathered = grainside::FullReport::gather(judgement->context(), judge);
        judgement->report.clear();
        write_report(form, gathered, judgement->report);
        *report = text_of(judgement->report);
        return grainside_ok;
    });
}
