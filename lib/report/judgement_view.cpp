// write_judgement_view: a dossier's verdicts for people.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/dossier_report.h"
#include "report/concession_text.h"
#include "report/demand_text.h"
#include "report/evidence_text.h"
#include "report/identity_lines.h"
#include "report/plain_lines.h"
#include "report/proof_record.h"
#include "report/told_verdicts.h"
#include "report/verdict_facts.h"
#include "report/view_text.h"

namespace grainside {
inline namespace v0 {

using report::Colours;
using report::counted;

namespace {

constexpr std::size_t kGradeIndent = 2;
constexpr std::size_t kWordsIndent = 17;
constexpr std::size_t kMostJudgedWordCells = 120;
constexpr std::size_t kMostReadings = 6;

class JudgementView {
public:
    JudgementView(const DossierContext& context, const Judgement& judgement, const JudgeOptions& judged,
                  const ViewOptions& options, const Conceded* conceded, std::string& out)
        : context_(context),
          judgement_(judgement),
          judged_(judged),
          conceded_(conceded),
          colours_(options.colour),
          width_(report::width_of(options)),
          lines_(colours_, width_, out),
          out_(out) {}

    void write() {
        report::append_sample_heading(context_, colours_, width_, out_);
        for (const auto& [part, told] : report::told_by_part(judgement_, conceded_)) write_part(part, told);
        if (judgement_.check == nullptr) out_ += "No listing on record: nothing was claimed.\n\n";
        report::append_identity(context_, judgement_.parts, colours_, width_, out_);
        write_unasked();
        report::append_methods(context_, judgement_.methods, colours_, width_, out_);
        if (judgement_.check != nullptr) report::append_fields_left_out(out_, *judgement_.check);
        write_summary();
        out_ += '\n';
    }

private:
    const Claim& claim_of(const Verdict& verdict) const { return judgement_.check->mentions[verdict.claim]; }

    void write_part(Part part, const std::vector<report::ToldVerdict>& told) {
        out_ += colours_.heading();
        out_ += name_of(part);
        out_ += colours_.plain();
        out_ += '\n';
        for (const report::ToldVerdict& one : told) write_told(one);
    }

    std::string words_of(const report::ToldVerdict& told) const {
        std::string text;
        for (const std::uint32_t place : told.places) {
            const Claim& claim = judgement_.check->mentions[place];
            const Field& field = context_.dossier.listing()->fields[claim.field];
            const std::string words = report::one_line(field.text.substr(claim.start, claim.end - claim.start), 60);
            if (!text.empty()) text += ", ";
            text += fmt::format("'{}' ({})", words, report::one_line(field.name, 40));
        }
        return text;
    }

    void write_told(const report::ToldVerdict& told) {
        const Verdict& verdict = *told.verdict;
        out_.append(kGradeIndent, ' ');
        out_ += colours_.grade(verdict.grade);
        out_ += name_of(verdict.grade);
        out_ += colours_.plain();
        out_.append(kWordsIndent - kGradeIndent - name_of(verdict.grade).size(), ' ');
        report::append_wrapped(out_, words_of(told), kWordsIndent, width_);
        lines_.write("reads as", report::statement_of(context_.book, claim_of(verdict)));
        lines_.write("because", verdict.because);
        write_against(verdict);
        if (!verdict.say_instead.empty()) lines_.write("say instead", verdict.say_instead);
        if (!verdict.remedy.empty()) lines_.write("remedy", verdict.remedy);
        if (const std::string belief = report::belief_text(verdict); !belief.empty()) lines_.write("belief", belief);
        write_readings(verdict);
        write_limits(verdict);
        if (verdict.contradictory) {
            lines_.write("alarm", "readings of this part contradict one another; look again before you publish");
        }
        std::string_view label = "changes";
        for (const std::string& change : verdict.would_change) {
            lines_.write(label, change);
            label = {};
        }
        const std::string demands = report::demands_line(context_.book, claim_of(verdict).says, verdict.grade);
        if (!demands.empty()) lines_.write("proof", demands);
        const std::string filed = report::filed_line(context_.book, *judgement_.check, verdict.claim, verdict.grade);
        if (!filed.empty()) lines_.write("on file", filed);
        write_sources(verdict);
        write_concession(verdict, told.at);
        out_ += '\n';
    }

    // The statement that a cross-check sets the words against.
    void write_against(const Verdict& verdict) {
        if (verdict.finding == kNoClaim) return;
        const Finding& finding = judgement_.check->findings[verdict.finding];
        if (finding.against == kNoClaim) return;
        const Claim& other = judgement_.check->mentions[finding.against];
        const Field& field = context_.dossier.listing()->fields[other.field];
        lines_.write("against", fmt::format("'{}' in {} ({}: {})",
                                            report::one_line(field.text.substr(other.start, other.end - other.start),
                                                             kMostJudgedWordCells),
                                            report::one_line(field.name, kMostJudgedWordCells), name_of(other.part),
                                            report::statement_of(context_.book, other)));
    }

    // With the id that it names: no other line of the view tells it.
    void write_concession(const Verdict& verdict, std::size_t at) {
        if (report::concession_of(conceded_, at) == nullptr) return;
        lines_.write("rule", rule_of(context_.book, *judgement_.check, verdict));
        lines_.write(report::concession_label(*conceded_, at), report::concession_line(*conceded_, at));
    }

    void write_readings(const Verdict& verdict) {
        std::string_view label = "readings";
        for (std::size_t i = 0; i < std::min(verdict.readings.size(), kMostReadings); ++i) {
            const WeighedEvidence& one = verdict.readings[i];
            lines_.write(label, report::reading_line(context_, one.part, one.reading) + " (" +
                                    report::weight_text(one.decibans, "it") + ')');
            label = {};
        }
        if (verdict.readings.size() > kMostReadings) {
            lines_.write({}, fmt::format("and {} more", verdict.readings.size() - kMostReadings));
        }
    }

    void write_limits(const Verdict& verdict) {
        std::string_view label = "limits";
        for (const LimitResult& limit : verdict.limits) {
            if (limit.says == LimitVerdict::unread) continue;
            lines_.write(label, report::limit_text(context_, limit));
            label = {};
        }
    }

    void write_sources(const Verdict& verdict) {
        const std::vector<std::uint32_t> sources = report::sources_of(context_, judgement_, verdict);
        std::string_view label = sources.size() == 1 ? "source" : "sources";
        for (const std::uint32_t index : sources) {
            lines_.write(label, report::cited(context_.book.sources()[index]));
            label = {};
        }
    }

    // What was read and no claim asked about: it may matter all the same.
    void write_unasked() {
        if (judgement_.check == nullptr || judgement_.unasked.empty()) return;
        out_ += colours_.heading();
        out_ += "Read, and no claim asked about it";
        out_ += colours_.plain();
        out_ += '\n';
        for (const ReadingPlace& place : judgement_.unasked) {
            out_ += "  - ";
            report::append_wrapped(
                out_,
                fmt::format("{}: {}", name_of(place.part), report::reading_line(context_, place.part, place.reading)),
                4, width_);
        }
        out_ += '\n';
    }

    static std::string percent_of(double share) { return fmt::format("{:g} %", 100 * share); }

    void write_summary() {
        std::array<std::size_t, 6> of_grade{};
        for (std::size_t at = 0; at < judgement_.verdicts.size(); ++at) {
            if (conceded_ != nullptr && conceded_->stands(at)) continue;
            ++of_grade[static_cast<std::size_t>(judgement_.verdicts[at].grade)];
        }
        std::string text = counted(report::counting(conceded_, judgement_.verdicts.size()), "verdict", "verdicts");
        std::string_view separator = ": ";
        for (std::size_t grade = 0; grade < of_grade.size(); ++grade) {
            if (of_grade[grade] == 0) continue;
            text += fmt::format("{}{} {}", separator, of_grade[grade], name_of(static_cast<Grade>(grade)));
            separator = ", ";
        }
        if (conceded_ != nullptr) report::append_conceded_count(text, conceded_->count);
        report::append_wrapped(out_, text, 0, width_);
        report::append_wrapped(out_,
                               fmt::format("Decision rule for limits: {}; a belief decides from {}; markets: {}.",
                                           name_of(judged_.decision_rule),
                                           percent_of(context_.evidence.data().judging.decided_at), markets_text()),
                               0, width_);
    }

    std::string markets_text() const {
        if (context_.dossier.listing() == nullptr) return "none, for want of a listing";
        const std::string text = report::markets_judged_for(context_, judged_);
        return text.empty() ? "none named, so only what holds everywhere" : text;
    }

    DossierContext context_;
    const Judgement& judgement_;
    const JudgeOptions& judged_;
    const Conceded* conceded_;
    Colours colours_;
    std::size_t width_;
    report::LabelledLines lines_;
    std::string& out_;
};

}  // namespace

void write_judgement_view(const DossierContext& context, const Judgement& judgement, const JudgeOptions& judged,
                          const ViewOptions& options, std::string& out, const Conceded* conceded) {
    JudgementView(context, judgement, judged, options, conceded, out).write();
}

}  // namespace v0
}  // namespace grainside
