#include "verdict/part_judgements.h"

#include <algorithm>
#include <utility>

namespace grainside::verdict {
namespace {

using identify::PartEvidence;

FrameBelief told(const Bench& bench, const PartEvidence& part, const identify::Belief& belief) {
    const evidence::Frame& frame = bench.data.frames[belief.frame];
    FrameBelief result;
    result.frame = frame.id;
    result.title = frame.title;
    result.conflict = belief.conflict;
    result.contradictory = belief.contradictory;
    result.own_priors = std::any_of(bench.dossier.priors.begin(), bench.dossier.priors.end(),
                                    [&](const evidence::OwnPrior& own) { return own.frame == belief.frame; });
    for (std::size_t i = 0; i < frame.candidates.size(); ++i) {
        result.candidates.push_back(
            {frame.candidates[i].id, frame.candidates[i].name, belief.prior[i], belief.posterior[i]});
    }
    const auto most = static_cast<std::size_t>(std::max_element(belief.posterior.begin(), belief.posterior.end()) -
                                               belief.posterior.begin());
    for (const identify::WeighedReading& reading : belief.readings) {
        result.readings.push_back(static_cast<std::uint32_t>(reading.reading));
        const bool weighed = reading.reading < part.without.size();
        const auto share_by = [&](const identify::PartBeliefs& beliefs) {
            return beliefs[belief.frame].posterior[most];
        };
        // As for claims: the mean of what it does alone and of what it does beside the others.
        result.decibans.push_back(
            weighed ? (identify::decibans_of(belief.posterior[most], share_by(part.without[reading.reading])) +
                       identify::decibans_of(share_by(part.alone[reading.reading]), belief.prior[most])) /
                          2
                    : 0);
    }
    for (const std::size_t odd : belief.odd_ones) {
        result.odd_ones.push_back(static_cast<std::uint32_t>(belief.readings[odd].reading));
    }
    std::stable_sort(result.candidates.begin(), result.candidates.end(),
                     [](const CandidateBelief& a, const CandidateBelief& b) { return a.posterior > b.posterior; });
    return result;
}

}  // namespace

std::vector<PartJudgement> parts_of(const Bench& bench) {
    std::vector<PartJudgement> parts;
    for (const PartEvidence& part : bench.parts) {
        if (part.record.readings.empty()) continue;
        PartJudgement judged;
        judged.part = part.record.part;
        for (const identify::Belief& belief : part.beliefs) {
            if (belief.readings.empty() || !identify::moved(belief)) continue;
            if (!identify::makes_sense(bench.tree, bench.data, part.beliefs, belief.frame)) continue;
            judged.frames.push_back(told(bench, part, belief));
        }
        parts.push_back(std::move(judged));
    }
    return parts;
}

std::vector<NamedMethod> methods_of(const Bench& bench, const std::vector<Verdict>& verdicts) {
    std::vector<bool> named(bench.data.methods.size(), false);
    for (const PartEvidence& part : bench.parts) {
        for (const evidence::Reading& reading : part.record.readings) named[reading.method] = true;
    }
    for (const Verdict& verdict : verdicts) {
        for (std::size_t i = 0; i < named.size(); ++i) {
            if (bench.data.methods[i].id == verdict.next_test) named[i] = true;
        }
    }
    std::vector<NamedMethod> methods;
    for (std::size_t i = 0; i < named.size(); ++i) {
        if (!named[i]) continue;
        const evidence::Method& method = bench.data.methods[i];
        methods.push_back({method.id, method.title, method.cautions, method.sources});
    }
    return methods;
}

}  // namespace grainside::verdict
