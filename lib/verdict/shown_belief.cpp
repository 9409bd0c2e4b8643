#include "verdict/shown_belief.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <vector>

#include "verdict/percent_text.h"

namespace grainside::verdict {

std::string shown(const Bench& bench, const identify::Belief& belief) {
    constexpr std::size_t kMostNamed = 3;
    constexpr double kLeastNamed = 0.05;
    const auto& candidates = bench.data.frames[belief.frame].candidates;
    std::vector<std::size_t> order(candidates.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return belief.posterior[a] > belief.posterior[b]; });
    std::string text;
    for (std::size_t rank = 0; rank < std::min(kMostNamed, order.size()); ++rank) {
        const double share = belief.posterior[order[rank]];
        if (rank > 0 && share < kLeastNamed) break;
        if (!text.empty()) text += ", ";
        text += fmt::format("{} ({})", candidates[order[rank]].name, percent_text(share));
    }
    return text;
}

const identify::Belief* loudest_against(const ClaimEvidence& evidence) {
    const identify::Belief* loudest = nullptr;
    double most = 0;
    const auto consider = [&](std::size_t frame, double fails) {
        const identify::Belief& belief = evidence.part->beliefs[frame];
        if (belief.readings.empty() || fails <= most) return;
        loudest = &belief;
        most = fails;
    };
    for (const identify::FrameView& view : evidence.views) {
        if (view.outer != evidence::kNone) consider(view.outer, 1 - view.inside);
        double fails = 0;
        const identify::Belief& belief = evidence.part->beliefs[view.frame];
        for (std::size_t i = 0; i < view.bearings.size(); ++i) {
            if (view.bearings[i] == identify::Bearing::fails) fails += belief.posterior[i];
        }
        consider(view.frame, fails);
    }
    return loudest;
}

const identify::Belief* closest(const ClaimEvidence& evidence) {
    const identify::Belief* found = nullptr;
    for (const identify::FrameView& view : evidence.views) {
        const identify::Belief& belief = evidence.part->beliefs[view.frame];
        if (!belief.readings.empty()) found = &belief;
    }
    return found;
}

}  // namespace grainside::verdict
