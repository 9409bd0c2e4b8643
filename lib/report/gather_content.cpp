#include "report/gather_content.h"

#include <algorithm>
#include <map>
#include <utility>

#include "evidence/dossier_data.h"
#include "evidence/evidence_data.h"
#include "grainside/version.h"
#include "report/cost_facts.h"
#include "report/demand_text.h"
#include "report/proof_record.h"
#include "report/told_verdicts.h"
#include "report/verdict_facts.h"

namespace grainside::report {
namespace {

constexpr double kLeastAnswer = 0.02;
constexpr std::size_t kMostAnswers = 4;
constexpr std::size_t kMostReadings = 12;

std::string label_of(std::string_view field) {
    constexpr std::string_view kAttribute = "additionalProperty.";
    if (field.starts_with(kAttribute)) field.remove_prefix(kAttribute.size());
    return std::string(field);
}

class Gatherer {
public:
    Gatherer(const DossierContext& context, const Judgement& judgement, const JudgeOptions& judged,
             ReportContent& content)
        : context_(context), judgement_(judgement), judged_(judged), content_(content) {}

    void gather() {
        gather_sample();
        content_.pictures = evidence::pictures_of(context_.dossier.data());
        if (judgement_.check != nullptr) {
            gather_fields();
            gather_verdicts();
        }
        gather_questions();
        gather_readings();
        gather_methods();
        gather_cost();
        gather_frame();
    }

private:
    const evidence::DossierData& dossier() const { return context_.dossier.data(); }

    void gather_sample() {
        content_.id = dossier().id;
        content_.what = dossier().what;
        content_.seller = dossier().seller;
        content_.bought = dossier().bought;
        content_.price = dossier().price;
        content_.condition = dossier().condition;
        content_.months_in_use = dossier().months_in_use;
        content_.dossier_sha256 = dossier().sha256;
        content_.has_listing = dossier().has_listing;
        content_.captured = dossier().captured;
        content_.listing_file = dossier().listing_file;
        content_.listing_sha256 = dossier().listing_sha256;
        content_.region = dossier().listing.region;
        content_.language = dossier().listing.language;
        const auto name_file = [&](const std::string& file) {
            if (!file.empty()) content_.files.push_back((dossier().folder / file).string());
        };
        name_file(dossier().listing_file);
        for (const evidence::PartRecord& part : dossier().parts) {
            for (const evidence::Reading& reading : part.readings) name_file(reading.photo);
        }
        if (dossier().proofs == nullptr) return;
        for (const FiledProof& proof : dossier().proofs->all()) name_file(proof.copy);
    }

    void gather_fields() {
        for (const Field& field : dossier().listing.fields) {
            // The kind of product that the sample lent it is none of the seller's words; nothing is claimed in it.
            if (&field == &dossier().listing.fields.back() && dossier().lent_category) continue;
            content_.fields.push_back({label_of(field.name), std::string(field.text), {}});
        }
    }

    void gather_verdicts() {
        // The main outside part first: it is what the listing's title speaks of.
        const std::map<Part, std::vector<ToldVerdict>> parts = told_by_part(judgement_);
        const Part main_part = judgement_.check->main_part;
        if (const auto main = parts.find(main_part); main != parts.end()) {
            for (const ToldVerdict& one : main->second) add_verdict(one);
        }
        for (const auto& [part, told] : parts) {
            if (part == main_part) continue;
            for (const ToldVerdict& one : told) add_verdict(one);
        }
        for (const ReportVerdict& verdict : content_.verdicts) {
            ++content_.of_grade[static_cast<std::size_t>(verdict.grade)];
        }
        content_.worst = judgement_.worst;
        content_.proofs_met = judgement_.check->proofs_met;
        for (ReportField& field : content_.fields) {
            std::sort(field.marks.begin(), field.marks.end(), [](const VerdictMark& a, const VerdictMark& b) {
                return a.span.start != b.span.start ? a.span.start < b.span.start : a.span.end > b.span.end;
            });
        }
    }

    void add_verdict(const ToldVerdict& told) {
        const Verdict& verdict = *told.verdict;
        const Claim& claim = judgement_.check->mentions[verdict.claim];
        ReportVerdict added;
        added.number = static_cast<std::uint32_t>(content_.verdicts.size() + 1);
        added.part = claim.part;
        added.kind = claim.kind;
        added.grade = verdict.grade;
        added.basis = verdict.basis;
        for (const std::uint32_t place : told.places) {
            const Claim& stated = judgement_.check->mentions[place];
            ReportField& field = content_.fields[stated.field];
            added.words.push_back({field.text.substr(stated.start, stated.end - stated.start), field.label});
            field.marks.push_back({{stated.start, stated.end, verdict.grade}, added.number});
        }
        added.says = says(claim);
        added.because = verdict.because;
        added.against = against_of(verdict);
        added.say_instead = verdict.say_instead;
        added.remedy = verdict.remedy;
        added.holds = verdict.holds;
        added.fails = verdict.fails;
        added.open = verdict.open;
        added.belief = belief_text(verdict);
        added.contradictory = verdict.contradictory;
        for (const WeighedEvidence& one : verdict.readings) {
            if (added.readings.size() == kMostReadings) break;
            ReportReading reading = reading_of(one.part, one.reading);
            reading.decibans = one.decibans;
            reading.weight = weight_text(one.decibans, "it");
            added.readings.push_back(std::move(reading));
        }
        for (const LimitResult& limit : verdict.limits) {
            if (limit.says != LimitVerdict::unread) added.limits.push_back(limit_text(context_, limit));
        }
        added.changes = verdict.would_change;
        added.would_support = demand_texts(context_.book, claim.says, verdict.grade);
        added.on_file = filed_line(context_.book, *judgement_.check, verdict.claim, verdict.grade);
        for (const std::uint32_t index : sources_of(context_, judgement_, verdict)) {
            added.sources.push_back(source_of(index));
        }
        if (verdict.finding != kNoClaim) {
            added.rule = context_.book.rules()[judgement_.check->findings[verdict.finding].rule].id;
        }
        content_.verdicts.push_back(std::move(added));
    }

    std::string says(const Claim& claim) const {
        std::string text = claim.negated ? "not " : "";
        text += context_.book.concept_wording(claim.says);
        if (claim.place != 0) text.append(" ").append(context_.book.concept_wording(claim.place));
        if (claim.called != 0) text.append(", called ").append(context_.book.concept_wording(claim.called));
        if (claim.hedged) text += ", hedged";
        if (claim.look_alike) text += ", written with letters of another script that look alike";
        return text;
    }

    std::string against_of(const Verdict& verdict) const {
        if (verdict.finding == kNoClaim) return {};
        const Finding& finding = judgement_.check->findings[verdict.finding];
        if (finding.against == kNoClaim) return {};
        const Claim& other = judgement_.check->mentions[finding.against];
        const ReportField& field = content_.fields[other.field];
        return '\'' + field.text.substr(other.start, other.end - other.start) + "' in " + field.label + " (" +
               std::string(name_of(other.part)) + ": " + says(other) + ')';
    }

    ReportSource source_of(std::uint32_t index) const {
        const SourceInfo& source = context_.book.sources()[index];
        return {source.cite, source.from_memory};
    }

    ReportReading reading_of(Part part, std::uint32_t index) const {
        ReportReading reading;
        reading.part = part;
        for (const evidence::PartRecord& record : dossier().parts) {
            if (record.part != part || index >= record.readings.size()) continue;
            const evidence::Reading& one = record.readings[index];
            reading.method = context_.evidence.data().methods[one.method].title;
            reading.date = one.date;
            reading.result = reading_result(context_, part, index);
            reading.note = one.note;
            const auto picture =
                std::find_if(content_.pictures.begin(), content_.pictures.end(),
                             [&](const evidence::PictureFile& file) { return file.path == one.photo; });
            if (picture != content_.pictures.end()) {
                reading.picture = static_cast<std::size_t>(picture - content_.pictures.begin());
            }
            break;
        }
        return reading;
    }

    void gather_questions() {
        for (const PartJudgement& part : judgement_.parts) {
            for (const FrameBelief& belief : part.frames) {
                ReportQuestion question{part.part, belief.title, {}, belief.contradictory};
                for (const CandidateBelief& candidate : belief.candidates) {
                    const bool shown = question.answers.empty() || candidate.posterior >= kLeastAnswer;
                    if (!shown || question.answers.size() == kMostAnswers) break;
                    question.answers.push_back({candidate.name, candidate.prior, candidate.posterior});
                }
                content_.questions.push_back(std::move(question));
            }
        }
    }

    void gather_readings() {
        for (const evidence::PartRecord& record : dossier().parts) {
            for (std::uint32_t i = 0; i < record.readings.size(); ++i) {
                content_.readings.push_back(reading_of(record.part, i));
            }
        }
        for (const ReadingPlace& place : judgement_.unasked) {
            content_.unasked.push_back(reading_of(place.part, place.reading));
        }
    }

    void gather_methods() {
        std::vector<NamedMethod> named = judgement_.methods;
        for (const NamedMethod& method : named) {
            ReportMethod added{method.title, {}};
            for (const std::uint32_t index : method.sources) added.sources.push_back(source_of(index));
            content_.methods.push_back(std::move(added));
        }
        for (const PlannedTest& test : content_.plan.tests) {
            const bool known = std::any_of(named.begin(), named.end(),
                                           [&](const NamedMethod& method) { return method.method == test.method; });
            if (!known) named.push_back({test.method, test.title, test.cautions, {}});
        }
        content_.cautions = cautions_of(named);
    }

    void gather_cost() {
        ReportCost& cost = content_.cost;
        cost.estimate = estimate_cost(context_.evidence, context_.dossier);
        cost.style = style_of(cost.estimate.currency, context_.evidence.data().costs);
        for (const std::uint32_t index : cost_sources(cost.estimate)) {
            cost.sources.push_back(source_of(index));
            cost.source_ids[index] = context_.book.sources()[index].id;
        }
    }

    void gather_frame() {
        content_.decision_rule = name_of(judged_.decision_rule);
        content_.markets = markets_judged_for(context_, judged_);
        content_.day = judged_.check.on;
        if (content_.day.empty()) content_.day = dossier().captured.empty() ? judged_.today : dossier().captured;
        content_.decided_at = context_.evidence.data().judging.decided_at;
        content_.rule_book = context_.book.digest();
        content_.rules = context_.book.rules().size();
        content_.evidence_methods = context_.evidence.method_count();
        content_.limits = context_.evidence.limit_count();
        content_.version = kVersion;
    }

    DossierContext context_;
    const Judgement& judgement_;
    const JudgeOptions& judged_;
    ReportContent& content_;
};

}  // namespace

ReportContent gather_content(const DossierContext& context, Judge& judge) {
    ReportContent content;
    content.plan = judge.plan(context.dossier);
    Gatherer(context, judge.judge(context.dossier), judge.options(), content).gather();
    return content;
}

}  // namespace grainside::report
