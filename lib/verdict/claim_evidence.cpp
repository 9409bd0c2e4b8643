#include "verdict/claim_evidence.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "identify/likelihood.h"

namespace grainside::verdict {
namespace {

using evidence::EvidenceData;
using identify::FrameView;
using identify::PartBeliefs;
using identify::PartEvidence;
using identify::Truth;

constexpr double kLeastDecibans = 1;

Truth for_claim(Truth truth, const Claim& claim) {
    if (claim.negated) std::swap(truth.holds, truth.fails);
    return truth;
}

// What the frames alone make of a claim.
Grade grade_of(const PartBeliefs& beliefs, const std::vector<FrameView>& views, const Claim& claim,
               const evidence::Judging& judging) {
    const Truth after = for_claim(identify::truth_of(beliefs, views), claim);
    const Truth before = for_claim(identify::truth_before(beliefs, views), claim);
    switch (identify::decided_by(before, after, judging)) {
        case identify::Bearing::fails:
            return Grade::contradicted;
        case identify::Bearing::holds:
            return Grade::consistent;
        case identify::Bearing::open:
            break;
    }
    return Grade::inconclusive;
}

bool any_reading(const PartBeliefs& beliefs, const std::vector<FrameView>& views) {
    return std::any_of(views.begin(), views.end(),
                       [&](const FrameView& view) { return !beliefs[view.frame].readings.empty(); });
}

// A test of the part tells something of these frames, whether it counts or not.
bool tells_of(const EvidenceData& data, const evidence::PartRecord& record, const std::vector<FrameView>& views) {
    return std::any_of(views.begin(), views.end(), [&](const FrameView& view) {
        return std::any_of(record.readings.begin(), record.readings.end(), [&](const evidence::Reading& reading) {
            return identify::table_for(data.methods[reading.method], view.frame) != nullptr;
        });
    });
}

// A claim about the whole product speaks of its main part, unless something was read of the product as a whole.
const PartEvidence* part_for_frames(const Bench& bench, const Claim& claim) {
    if (claim.part != Part::whole) return bench.part(claim.part);
    const PartEvidence* whole = bench.part(Part::whole);
    if (whole != nullptr) {
        const auto views = identify::views_of(bench.tree, bench.data, whole->beliefs, Part::whole, claim.says);
        if (tells_of(bench.data, whole->record, views)) return whole;
    }
    return bench.part(bench.main_part);
}

// What each reading does for the claim: the change it makes to the odds, the mean of what it does alone and of what it
// does beside all the others. Alone it would hide what only the others make it tell; beside them, two readings that say
// the same would each seem to say nothing. (Of two readings the mean is their Shapley value.)
void weigh(const Bench& bench, const Claim& claim, ClaimEvidence& evidence) {
    const PartEvidence& part = *evidence.part;
    if (part.without.empty()) return;
    // As stated; a denied claim is the mirror of that.
    const double side = claim.negated ? -1 : 1;
    const auto truth_by = [&](const PartBeliefs& beliefs) {
        return identify::truth_with_priors(beliefs, evidence.views);
    };
    const Truth with = truth_by(part.beliefs);
    const Truth before = truth_by(identify::believe_part(bench.data, bench.dossier, {part.record.part, {}}));
    for (std::size_t i = 0; i < part.without.size(); ++i) {
        const double last = identify::decibans_of(with, truth_by(part.without[i]));
        const double alone = identify::decibans_of(truth_by(part.alone[i]), before);
        const double decibans = side * (last + alone) / 2;
        if (std::abs(decibans) < kLeastDecibans) continue;
        evidence.readings.push_back({part.record.part, static_cast<std::uint32_t>(i), decibans});
    }
    std::stable_sort(
        evidence.readings.begin(), evidence.readings.end(),
        [](const WeighedEvidence& a, const WeighedEvidence& b) { return std::abs(a.decibans) > std::abs(b.decibans); });
}

// What the frames make of the claim, and whether any reading speaks of it.
struct FramesGrade {
    Grade grade = Grade::unsupported;
    bool read = false;
};

FramesGrade frames_grade(const PartBeliefs& beliefs, const std::vector<FrameView>& views, const Claim& claim,
                         const evidence::Judging& judging) {
    FramesGrade result;
    // As stated, not as denied: what the part is may rule out what nobody has looked at more closely.
    const double fails = identify::truth_of(beliefs, views).fails;
    result.read = any_reading(beliefs, views) || fails > 0;
    if (!any_reading(beliefs, views) && fails < judging.decided_at) return result;
    result.grade = grade_of(beliefs, views, claim, judging);
    // What is read of the part, that it is leather, does not tell the animal.
    const bool closer_unread =
        result.grade == Grade::inconclusive && views.size() > 1 && beliefs[views.back().frame].readings.empty();
    if (closer_unread) result.grade = Grade::unsupported;
    return result;
}

// The readings without which the frames would grade the claim otherwise.
void find_carriers(const Bench& bench, const Claim& claim, ClaimEvidence& evidence) {
    const PartEvidence& part = *evidence.part;
    evidence.stands_alone = part.without.size() == part.record.readings.size();
    for (std::size_t i = 0; i < part.without.size(); ++i) {
        const Grade without = frames_grade(part.without[i], evidence.views, claim, bench.data.judging).grade;
        if (without == evidence.grade) continue;
        evidence.stands_alone = false;
        evidence.carriers.push_back({static_cast<std::uint32_t>(i), without});
    }
}

void ask_frames(const Bench& bench, const Claim& claim, ClaimEvidence& evidence) {
    evidence.part = part_for_frames(bench, claim);
    if (evidence.part == nullptr) return;
    const PartBeliefs& beliefs = evidence.part->beliefs;
    evidence.views = identify::views_of(bench.tree, bench.data, beliefs, evidence.part->record.part, claim.says);
    if (evidence.views.empty()) return;
    evidence.asked = true;
    evidence.truth = for_claim(identify::truth_of(beliefs, evidence.views), claim);
    weigh(bench, claim, evidence);
    evidence.contradictory = std::any_of(evidence.views.begin(), evidence.views.end(),
                                         [&](const FrameView& view) { return beliefs[view.frame].contradictory; });
    const FramesGrade by_frames = frames_grade(beliefs, evidence.views, claim, bench.data.judging);
    evidence.read = by_frames.read;
    evidence.grade = by_frames.grade;
    if (evidence.grade == Grade::inconclusive || evidence.grade == Grade::unsupported) return;
    find_carriers(bench, claim, evidence);
    // Readings that contradict one another decide nothing that hangs on a single one of them.
    if (evidence.contradictory && !evidence.stands_alone) evidence.grade = Grade::inconclusive;
}

// By its readings the part is not `needs`: a coat on cloth says nothing of leather, and the cloth says enough.
bool is_something_else(const Bench& bench, const PartEvidence& part, ConceptId needs) {
    if (needs == 0) return false;
    const auto views = identify::views_of(bench.tree, bench.data, part.beliefs, part.record.part, needs);
    return identify::truth_of(part.beliefs, views).fails >= bench.data.judging.decided_at;
}

void ask_limits(const Bench& bench, const Claim& claim, ClaimEvidence& evidence) {
    const bool worn = bench.dossier.worn();
    for (const evidence::Limit* limit : bench.limits) {
        if (!speaks_of(bench.tree, *limit, claim)) continue;
        for (const PartEvidence& part : bench.parts) {
            const Part which = part.record.part;
            const bool here = claim.part == Part::whole || claim.part == which;
            if (!here) continue;
            if (!limit->no_part_is.empty()) {
                if ((limit->within_parts & evidence::part_bit(which)) == 0) continue;
                LimitDecision decision = decide_absence(bench.tree, bench.data, *limit, part);
                if (decision.says != LimitVerdict::unread) evidence.limits.push_back(std::move(decision));
                continue;
            }
            auto decision = decide_limit(bench.tree, bench.data, *limit, claim, part, worn, bench.policy);
            if (!decision) continue;
            const bool main = claim.part != Part::whole || which == bench.main_part;
            if (decision->says == LimitVerdict::unread && !main) continue;
            if (is_something_else(bench, part, limit->needs)) continue;
            evidence.limits.push_back(std::move(*decision));
        }
    }
}

// Frames and limits together: whatever contradicts decides, then what is in doubt, then what supports.
void combine(const Bench& bench, ClaimEvidence& evidence) {
    const auto any = [&](LimitVerdict says) {
        return std::any_of(evidence.limits.begin(), evidence.limits.end(),
                           [&](const LimitDecision& decision) { return decision.says == says; });
    };
    double contradiction = 0;
    double support = 0;
    for (const LimitDecision& decision : evidence.limits) {
        evidence.asked = true;
        if (decision.says == LimitVerdict::unread) continue;
        evidence.read = true;
        if (!decision.worn_out) contradiction = std::max(contradiction, decision.contradiction);
        support = std::max(support, decision.support);
    }
    // Belief by the frames alone that the claim may be true: a limit cannot lift what they speak against.
    const bool not_against = evidence.truth.fails <= 1 - bench.data.judging.decided_at;
    Truth& truth = evidence.truth;
    truth.fails = std::max(truth.fails, contradiction);
    truth.holds = std::min(std::max(truth.holds, support), 1 - truth.fails);
    truth.open = std::max(0.0, 1 - truth.holds - truth.fails);

    if (any(LimitVerdict::contradicts)) {
        evidence.grade = Grade::contradicted;
        return;
    }
    if (evidence.grade == Grade::contradicted) return;
    const bool only_met = any(LimitVerdict::met) && evidence.grade == Grade::unsupported;
    if (any(LimitVerdict::undecided) || (only_met && !any(LimitVerdict::supports))) {
        evidence.grade = Grade::inconclusive;
    } else if (any(LimitVerdict::supports) && not_against && !evidence.contradictory) {
        evidence.grade = Grade::consistent;
    }
}

// How sure it is that the limit speaks for the claim: as good as unknown where what was read cannot tell.
double chance_of(const LimitDecision& decision) {
    constexpr double kUnknown = 0.5;
    const bool blind = decision.says == LimitVerdict::unread || decision.partial || decision.needs_unshown ||
                       decision.worn_out || decision.between;
    if (blind) return kUnknown;
    return decision.supported_by.empty() ? 1 - decision.contradiction : decision.support;
}

}  // namespace

const PartEvidence* Bench::part(Part which) const noexcept {
    const auto found = std::find_if(parts.begin(), parts.end(),
                                    [which](const PartEvidence& part) { return part.record.part == which; });
    return found == parts.end() ? nullptr : &*found;
}

ClaimEvidence evidence_on(const Bench& bench, const Claim& claim) {
    ClaimEvidence evidence;
    ask_frames(bench, claim, evidence);
    evidence.frames_grade = evidence.grade;
    ask_limits(bench, claim, evidence);
    combine(bench, evidence);
    return evidence;
}

identify::Question question_of(const Bench& bench, const Claim& claim, const ClaimEvidence& evidence) {
    identify::Question question;
    question.part = claim.part == Part::whole ? bench.main_part : claim.part;
    if (evidence.part != nullptr) question.part = evidence.part->record.part;
    question.says = claim.says;
    question.views = evidence.views;
    question.open = evidence.grade == Grade::unsupported || evidence.grade == Grade::inconclusive;
    for (const LimitDecision& decision : evidence.limits) {
        if (!decision.limit->no_part_is.empty() || decision.part != question.part) continue;
        question.limits.push_back({decision.limit->quantity, chance_of(decision)});
    }
    return question;
}

}  // namespace grainside::verdict
