#include "verdict/claim_verdicts.h"

#include <algorithm>
#include <set>
#include <string>
#include <unordered_map>
#include <utility>

#include "identify/likelihood.h"
#include "verdict/filed_role.h"
#include "verdict/limit_text.h"
#include "verdict/shown_belief.h"
#include "verdict/verdict_text.h"

namespace grainside::verdict {
namespace {

LimitResult result_of(const Bench& bench, const LimitDecision& decision) {
    LimitResult result;
    result.limit = decision.limit->id;
    result.title = decision.limit->title;
    result.because = decision.limit->because;
    result.part = decision.part;
    result.quantity = decision.limit->quantity;
    result.bound = decision.bound();
    result.says = decision.says;
    result.probability = decision.contradiction;
    result.sources = decision.limit->sources;
    result.markets = decision.limit->markets;
    if (decision.says != LimitVerdict::unread) result.value = value_text(bench, decision);
    if (decision.repeats) result.repeats = static_cast<std::uint32_t>(*decision.repeats);
    result.readings = decision.readings;
    return result;
}

// Evidence takes away the want of it. What misleads or means nothing does so whatever is on record, unless it is
// plainly false.
Grade joint_grade(Grade words, Grade evidence) {
    if (words == Grade::unsupported || evidence == Grade::contradicted) return evidence;
    return words;
}

// The worst finding on each claim that has one, by claim.
std::unordered_map<std::uint32_t, std::uint32_t> worst_findings(const CheckResult& check) {
    std::unordered_map<std::uint32_t, std::uint32_t> worst;
    for (std::uint32_t i = 0; i < check.findings.size(); ++i) {
        const auto [known, first] = worst.try_emplace(check.findings[i].claim, i);
        if (!first && check.findings[i].grade < check.findings[known->second].grade) known->second = i;
    }
    return worst;
}

// Readings that are in no frame and no limit that a claim asks.
std::vector<ReadingPlace> unasked_readings(const Bench& bench, const std::map<Statement, ClaimEvidence>& considered) {
    std::set<std::pair<Part, std::size_t>> asked;
    for (const auto& one : considered) {
        const ClaimEvidence& evidence = one.second;
        for (const LimitDecision& decision : evidence.limits) {
            for (const std::uint32_t reading : decision.readings) asked.insert({decision.part, reading});
        }
        if (evidence.part == nullptr) continue;
        const auto add = [&](std::size_t frame) {
            if (frame == evidence::kNone) return;
            for (const identify::WeighedReading& reading : evidence.part->beliefs[frame].readings) {
                asked.insert({evidence.part->record.part, reading.reading});
            }
        };
        for (const identify::FrameView& view : evidence.views) {
            add(view.frame);
            add(view.outer);
        }
        // What wear keeps from counting was asked all the same.
        for (std::size_t i = 0; i < evidence.part->record.readings.size(); ++i) {
            const evidence::Method& method = bench.data.methods[evidence.part->record.readings[i].method];
            const bool tells = std::any_of(evidence.views.begin(), evidence.views.end(), [&](const auto& view) {
                return identify::table_for(method, view.frame) != nullptr;
            });
            if (tells) asked.insert({evidence.part->record.part, i});
        }
    }
    std::vector<ReadingPlace> unasked;
    for (const identify::PartEvidence& part : bench.parts) {
        for (std::uint32_t i = 0; i < part.record.readings.size(); ++i) {
            if (!asked.contains({part.record.part, i})) unasked.push_back({part.record.part, i});
        }
    }
    return unasked;
}

class Verdicts {
public:
    Verdicts(const Bench& bench, const RuleBook& book, const Listing& listing, const CheckResult& check,
             const Checker& checker)
        : bench_(bench), book_(book), listing_(listing), check_(check), checker_(checker) {}

    // Of every claim that states the same; its number is the caller's.
    Verdict by_evidence(const Claim& claim, const ClaimEvidence& evidence) const {
        Verdict verdict;
        verdict.grade = evidence.grade;
        verdict.holds = evidence.truth.holds;
        verdict.fails = evidence.truth.fails;
        verdict.open = evidence.truth.open;
        verdict.contradictory = evidence.contradictory;
        verdict.readings = evidence.readings;
        for (const LimitDecision& decision : evidence.limits) verdict.limits.push_back(result_of(bench_, decision));
        verdict.because = because_of(bench_, claim, evidence);
        Changes changes = changes_of(bench_, claim, evidence);
        verdict.would_change = std::move(changes.sentences);
        verdict.say_instead = offer(claim, evidence);
        if (changes.next_test) verdict.next_test = bench_.data.methods[*changes.next_test].id;
        return verdict;
    }

    // Whether the readings leave an offer standing: 'coated leather' is none above a third of coat, and 'imitation
    // leather (polyurethane)' is none of a sheet that is leather. What the book has no concept for is not held against
    // them.
    bool stands(const Claim& claim, std::string_view wording) const {
        const std::size_t bracket = std::min(wording.find(" ("), wording.size());
        std::string_view inside = wording.substr(bracket);
        inside = inside.substr(std::min<std::size_t>(2, inside.size()));
        return stands_alone(claim, wording.substr(0, bracket)) &&
               stands_alone(claim, inside.substr(0, inside.find(')')));
    }

    bool stands_alone(const Claim& claim, std::string_view words) const {
        std::string name(words);
        std::replace(name.begin(), name.end(), ' ', '-');
        Claim offered = claim;
        offered.says = bench_.tree.find(name);
        return offered.says == 0 || evidence_on(bench_, offered).grade != Grade::contradicted;
    }

    // What could be written instead of words that evidence contradicts: what the limit offers, or what the part is;
    // only where the check lets it pass. "" for nothing.
    std::string offer(const Claim& claim, const ClaimEvidence& evidence) const {
        if (evidence.grade != Grade::contradicted || claim.negated) return {};
        std::string wording;
        if (evidence.frames_grade == Grade::contradicted) {
            const identify::Belief* belief = loudest_against(evidence);
            const auto most = static_cast<std::size_t>(
                std::max_element(belief->posterior.begin(), belief->posterior.end()) - belief->posterior.begin());
            const evidence::Candidate& candidate = bench_.data.frames[belief->frame].candidates[most];
            const bool sure = belief->posterior[most] >= bench_.data.judging.decided_at;
            if (sure && candidate.is != 0) wording = bench_.tree[candidate.is].wording;
        } else {
            for (const LimitDecision& decision : evidence.limits) {
                if (decision.says != LimitVerdict::contradicts || !wording.empty()) continue;
                if (stands(claim, decision.limit->say_instead)) wording = decision.limit->say_instead;
            }
        }
        return wording.empty() || checker_.passes_itself(listing_, wording) ? wording : std::string();
    }

    void add_words(std::uint32_t finding, const ClaimEvidence& evidence, Verdict& verdict) const {
        const Finding& found = check_.findings[finding];
        verdict.finding = finding;
        verdict.grade = joint_grade(found.grade, evidence.grade);
        if (verdict.grade == evidence.grade && found.grade != evidence.grade) return;
        const std::string shown = std::move(verdict.because);
        give_reason(finding, verdict);
        if (evidence.read) verdict.because += ' ' + shown;
        if (found.grade == Grade::unsupported) return;
        // Words that mislead or mean nothing do so whatever a test shows.
        verdict.would_change.clear();
        verdict.next_test.clear();
    }

    Verdict by_words(std::uint32_t finding) const {
        Verdict verdict;
        verdict.claim = check_.findings[finding].claim;
        verdict.grade = check_.findings[finding].grade;
        verdict.finding = finding;
        give_reason(finding, verdict);
        return verdict;
    }

    // Documents take away the want of evidence and no more: a reading that decides against wins, and words that mislead
    // or mean nothing do so whatever is on file.
    void add_file(Verdict& verdict) const {
        const FiledTold told = filed_on(check_, verdict.claim, verdict.grade);
        if (told.proof == nullptr) return;
        if (told.role == FiledRole::overruled) {
            verdict.because += " A document on file says otherwise, and the readings count: " + reason_of(*told.proof);
        } else if (told.role == FiledRole::not_enough) {
            const ConceptId says = check_.mentions[verdict.claim].says;
            verdict.because += " On file: " + why_not_lifted(book_, *told.proof, told.outcome, says) + '.';
        } else if (verdict.finding == kNoClaim) {
            std::string reason = "A document on file supports it: " + reason_of(*told.proof);
            if (verdict.grade != Grade::unsupported) reason += ' ' + verdict.because;
            verdict.because = std::move(reason);
            if (verdict.grade != Grade::consistent && !told.proof->expires.empty()) {
                verdict.would_change.insert(verdict.would_change.begin(),
                                            told.proof->document + " runs out on " + told.proof->expires + '.');
            }
            verdict.grade = Grade::consistent;
            verdict.basis = Basis::evidence;
        }
    }

private:
    // "Test report 4711, Harbour Test House, 2026-03-02, runs out 2029-03-01 (ISO 811; water column 2,000 mm)."
    static std::string reason_of(const FiledProof& proof) {
        std::string text = proof_text(proof);
        const std::string_view between = proof.standard.empty() || proof.result.empty() ? "" : "; ";
        if (!proof.standard.empty() || !proof.result.empty()) {
            text.append(" (").append(proof.standard).append(between).append(proof.result).append(")");
        }
        return text + '.';
    }

    void give_reason(std::uint32_t finding, Verdict& verdict) const {
        const Finding& found = check_.findings[finding];
        verdict.basis = found.basis;
        verdict.because = book_.rules()[found.rule].because;
        verdict.say_instead = checker_.say_instead(listing_, found);
        if (!stands(check_.mentions[found.claim], verdict.say_instead)) verdict.say_instead.clear();
        if (verdict.say_instead.empty()) verdict.remedy = book_.rules()[found.rule].remedy;
    }

    const Bench& bench_;
    const RuleBook& book_;
    const Listing& listing_;
    const CheckResult& check_;
    const Checker& checker_;
};

}  // namespace

Statement statement_of(const Claim& claim) {
    const Quantity quantity = claim.quantity.value_or(Quantity{});
    return {claim.part,   claim.says,    claim.negated, claim.kind, claim.quantity.has_value(),
            quantity.low, quantity.high, quantity.unit};
}

std::map<Statement, ClaimEvidence> consider(const Bench& bench, const CheckResult& check) {
    std::map<Statement, ClaimEvidence> all;
    for (const Claim& claim : check.mentions) {
        if (!is_claim_kind(claim.kind)) continue;
        const auto [known, first] = all.try_emplace(statement_of(claim));
        if (first) known->second = evidence_on(bench, claim);
    }
    return all;
}

std::vector<Grade> grades_of(const CheckResult& check, const std::map<Statement, ClaimEvidence>& considered) {
    const auto findings = worst_findings(check);
    std::vector<Grade> grades;
    for (std::uint32_t i = 0; i < check.mentions.size(); ++i) {
        const auto known = considered.find(statement_of(check.mentions[i]));
        const bool claims = is_claim_kind(check.mentions[i].kind) && known != considered.end();
        const auto finding = findings.find(i);
        if (finding == findings.end()) {
            grades.push_back(claims ? known->second.grade : Grade::consistent);
        } else {
            const Grade words = check.findings[finding->second].grade;
            grades.push_back(claims ? joint_grade(words, known->second.grade) : words);
        }
    }
    return grades;
}

ListingVerdicts verdicts_on(const Bench& bench, const RuleBook& book, const Listing& listing, const CheckResult& check,
                            const Checker& checker) {
    const std::map<Statement, ClaimEvidence> considered = consider(bench, check);
    const auto findings = worst_findings(check);
    const Verdicts verdicts(bench, book, listing, check, checker);
    ListingVerdicts result;
    std::map<Statement, Verdict> by_evidence;  // sentences are made once for what a listing says a hundred times
    for (std::uint32_t i = 0; i < check.mentions.size(); ++i) {
        const Claim& claim = check.mentions[i];
        if (!is_claim_kind(claim.kind)) continue;
        const ClaimEvidence& evidence = considered.at(statement_of(claim));
        const auto [made, first] = by_evidence.try_emplace(statement_of(claim));
        if (first) made->second = verdicts.by_evidence(claim, evidence);
        Verdict verdict = made->second;
        verdict.claim = i;
        if (const auto finding = findings.find(i); finding != findings.end()) {
            verdicts.add_words(finding->second, evidence, verdict);
        }
        verdicts.add_file(verdict);
        result.verdicts.push_back(std::move(verdict));
    }
    for (std::uint32_t i = 0; i < check.findings.size(); ++i) {
        if (!is_claim_kind(check.mentions[check.findings[i].claim].kind)) {
            result.verdicts.push_back(verdicts.by_words(i));
            verdicts.add_file(result.verdicts.back());
        }
    }
    result.unasked = unasked_readings(bench, considered);
    return result;
}

}  // namespace grainside::verdict
