#include "identify/part_beliefs.h"

#include <algorithm>
#include <cmath>

namespace grainside::identify {
namespace {

using evidence::EvidenceData;
using evidence::Frame;
using evidence::kNone;
using vocabulary::ConceptTree;

// By candidate of the outer frame: it does not rule out what `frame` asks for.
std::vector<bool> within_of(const ConceptTree& tree, const EvidenceData& data, const Frame& frame) {
    std::vector<bool> within;
    for (const Bearing bearing : bearings_of(tree, data.frames[frame.of], frame.within)) {
        within.push_back(bearing != Bearing::fails);
    }
    return within;
}

double share_within(const std::vector<bool>& within, const std::vector<double>& belief) noexcept {
    double share = 0;
    for (std::size_t i = 0; i < within.size(); ++i) share += within[i] ? belief[i] : 0;
    return std::min(share, 1.0);
}

}  // namespace

double inside_of(const FrameView& view, const std::vector<double>& outer_belief) noexcept {
    return share_within(view.outer_within, outer_belief);
}

void TruthSum::add(const FrameView& view, const std::vector<double>& belief, double inside) {
    if (belief.empty() && inside >= 1) return;
    Truth part{0, 0, belief.empty() ? 1.0 : 0.0};
    for (std::size_t i = 0; i < belief.size(); ++i) {
        double& share = view.bearings[i] == Bearing::holds   ? part.holds
                        : view.bearings[i] == Bearing::fails ? part.fails
                                                             : part.open;
        share += belief[i];
    }
    if (!outer_asked_) {
        // The claim itself says nothing of what the part is, but it can be true of nothing else.
        part.holds *= inside;
        part.open *= inside;
        part.fails = part.fails * inside + (1 - inside);
    }
    truth_.holds += truth_.open * part.holds;
    truth_.fails += truth_.open * part.fails;
    truth_.open *= part.open;
    outer_asked_ = true;
}

PartBeliefs believe_part(const EvidenceData& data, const evidence::DossierData& dossier,
                         const evidence::PartRecord& part, const Counting& counting) {
    PartBeliefs beliefs(data.frames.size());
    for (std::size_t frame = 0; frame < data.frames.size(); ++frame) {
        beliefs[frame].frame = frame;
        if ((data.frames[frame].parts & evidence::part_bit(part.part)) == 0) continue;
        beliefs[frame] = believe(data, frame, part, priors_of(data, frame, dossier), counting);
    }
    return beliefs;
}

PartEvidence evidence_of(const EvidenceData& data, const evidence::DossierData& dossier,
                         const evidence::PartRecord& part) {
    PartEvidence evidence{part, believe_part(data, dossier, part, {dossier.worn()}), {}, {}, dossier.worn()};
    if (part.readings.size() > kMostWeighed) return evidence;
    for (std::size_t i = 0; i < part.readings.size(); ++i) {
        evidence.without.push_back(believe_part(data, dossier, part, {dossier.worn(), i, kNone, false}));
        evidence.alone.push_back(believe_part(data, dossier, part, {dossier.worn(), kNone, i, false}));
    }
    return evidence;
}

std::vector<FrameView> views_of(const ConceptTree& tree, const EvidenceData& data, const PartBeliefs& beliefs,
                                Part part, ConceptId says) {
    std::vector<FrameView> views;
    for (const bool closer : {false, true}) {
        for (std::size_t i = 0; i < data.frames.size(); ++i) {
            const Frame& frame = data.frames[i];
            if ((frame.of != kNone) != closer || !asks(tree, frame, part, says)) continue;
            FrameView view;
            view.frame = i;
            view.bearings = bearings_of(tree, frame, says);
            if (closer) {
                view.outer = frame.of;
                view.outer_within = within_of(tree, data, frame);
                // Without a reading on what the part is, that is taken as given.
                const Belief& outer = beliefs[frame.of];
                if (!outer.readings.empty()) view.inside = inside_of(view, outer.posterior);
            }
            views.push_back(std::move(view));
        }
    }
    return views;
}

Truth truth_of(const PartBeliefs& beliefs, const std::vector<FrameView>& views) {
    TruthSum sum;
    for (const FrameView& view : views) {
        const Belief& belief = beliefs[view.frame];
        // Without a reading on what the part is, that is taken as given.
        const bool outer_read = view.outer != kNone && !beliefs[view.outer].readings.empty();
        sum.add(view, belief.readings.empty() ? std::vector<double>() : belief.posterior,
                outer_read ? inside_of(view, beliefs[view.outer].posterior) : 1);
    }
    return sum.truth();
}

Truth truth_with_priors(const PartBeliefs& beliefs, const std::vector<FrameView>& views) {
    TruthSum sum;
    for (const FrameView& view : views) {
        const double inside = view.outer == kNone ? 1 : inside_of(view, beliefs[view.outer].posterior);
        sum.add(view, beliefs[view.frame].posterior, inside);
    }
    return sum.truth();
}

Truth truth_before(const PartBeliefs& beliefs, const std::vector<FrameView>& views) {
    TruthSum sum;
    for (const FrameView& view : views) {
        const Belief& belief = beliefs[view.frame];
        const bool outer_read = view.outer != kNone && !beliefs[view.outer].readings.empty();
        sum.add(view, belief.readings.empty() ? std::vector<double>() : belief.prior,
                outer_read ? inside_of(view, beliefs[view.outer].prior) : 1);
    }
    return sum.truth();
}

Bearing decided_by(const Truth& before, const Truth& after, const evidence::Judging& judging) noexcept {
    const auto shown = [&](double share_before, double share_after) {
        return share_after >= judging.decided_at && from_even_odds(share_before, share_after) >= judging.from_even;
    };
    if (shown(before.fails, after.fails)) return Bearing::fails;
    return shown(before.holds, after.holds) ? Bearing::holds : Bearing::open;
}

double from_even_odds(double before, double after) noexcept {
    const auto odds = [](double share) {
        const double within = std::clamp(share, 1e-12, 1 - 1e-12);  // for the sake of the division
        return within / (1 - within);
    };
    const double moved = odds(after) / odds(before);
    return moved / (1 + moved);
}

double decibans_of(double with, double without) noexcept {
    const auto decibans = [](double share) {
        const double within = std::clamp(share, 1e-12, 1 - 1e-12);  // for the sake of the logarithm
        return 10 * std::log10(within / (1 - within));
    };
    return decibans(with) - decibans(without);
}

double decibans_of(const Truth& with, const Truth& without) noexcept {
    if (with.holds <= 0 && without.holds <= 0) return decibans_of(1 - with.fails, 1 - without.fails);
    return decibans_of(with.holds + with.open / 2, without.holds + without.open / 2);
}

double belief_in(const ConceptTree& tree, const EvidenceData& data, const PartBeliefs& beliefs,
                 std::span<const ConceptId> concepts) {
    double none = 1;
    for (const Belief& belief : beliefs) {
        if (belief.posterior.empty() || belief.readings.empty()) continue;
        const Frame& frame = data.frames[belief.frame];
        double sum = 0;
        for (std::size_t i = 0; i < frame.candidates.size(); ++i) {
            const ConceptId is = frame.candidates[i].is;
            if (is != 0 && any_above(tree, concepts, is)) sum += belief.posterior[i];
        }
        // A tannage that was looked for does not make the part leather.
        const double inside =
            frame.of == kNone ? 1 : share_within(within_of(tree, data, frame), beliefs[frame.of].posterior);
        none *= 1 - std::min(1.0, sum * inside);
    }
    return 1 - none;
}

bool makes_sense(const ConceptTree& tree, const EvidenceData& data, const PartBeliefs& beliefs, std::size_t frame) {
    constexpr double kLeast = 0.5;
    const Frame& asked = data.frames[frame];
    if (asked.of == kNone || beliefs[asked.of].readings.empty()) return true;
    return share_within(within_of(tree, data, asked), beliefs[asked.of].posterior) >= kLeast;
}

}  // namespace grainside::identify
