#include "identify/posterior.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "identify/likelihood.h"

namespace grainside::identify {
namespace {

using evidence::kNone;

const double kDecibansPerNat = 10 / std::log(10.0);

// How far the likeliest and the unlikeliest candidate lie apart.
double spread_of(const std::vector<double>& log_likelihoods) {
    const auto [low, high] = std::minmax_element(log_likelihoods.begin(), log_likelihoods.end());
    return *high - *low;
}

// The readings of one look share its weight by rank of spread; equal spreads get equal shares.
void damp(const evidence::EvidenceData& data, const evidence::PartRecord& part, std::vector<WeighedReading>& readings) {
    struct Ranked {
        std::size_t index;
        double spread;
    };
    std::vector<bool> done(readings.size(), false);
    const auto look_of = [&](const WeighedReading& reading) -> const std::string& {
        return data.methods[part.readings[reading.reading].method].looks_at;
    };
    for (std::size_t first = 0; first < readings.size(); ++first) {
        std::vector<Ranked> look;
        for (std::size_t i = first; i < readings.size(); ++i) {
            if (done[i] || look_of(readings[i]) != look_of(readings[first])) continue;
            done[i] = true;
            look.push_back({i, spread_of(readings[i].log_likelihoods)});
        }
        std::sort(look.begin(), look.end(), [](const Ranked& a, const Ranked& b) { return a.spread > b.spread; });
        double share = 1;
        for (std::size_t begin = 0; begin < look.size();) {
            // Spreads that differ by rounding only are ties: whoever stands first in the file must not win.
            constexpr double kRounding = 1e-9;
            std::size_t end = begin;
            double sum = 0;
            while (end < look.size() && look[begin].spread - look[end].spread <= kRounding) {
                sum += share;
                share *= data.judging.same_look;
                ++end;
            }
            for (std::size_t i = begin; i < end; ++i) {
                readings[look[i].index].share = sum / static_cast<double>(end - begin);
            }
            begin = end;
        }
    }
}

// The logarithm of the sum of prior times likelihood.
double log_evidence(const std::vector<double>& prior, const std::vector<double>& log_likelihoods) {
    const double highest = *std::max_element(log_likelihoods.begin(), log_likelihoods.end());
    double sum = 0;
    for (std::size_t i = 0; i < prior.size(); ++i) sum += prior[i] * std::exp(log_likelihoods[i] - highest);
    return highest + std::log(sum);
}

// The joint logarithms of all readings but one; sums are taken in order of size, so that the order of the readings does
// not show in the last digit.
std::vector<double> joint(const std::vector<WeighedReading>& readings, std::size_t candidates, std::size_t but) {
    std::vector<double> sums(candidates, 0);
    std::vector<double> terms;
    for (std::size_t candidate = 0; candidate < candidates; ++candidate) {
        terms.clear();
        for (std::size_t i = 0; i < readings.size(); ++i) {
            if (i != but) terms.push_back(readings[i].share * readings[i].log_likelihoods[candidate]);
        }
        std::sort(terms.begin(), terms.end());
        sums[candidate] = std::accumulate(terms.begin(), terms.end(), 0.0);
    }
    return sums;
}

// Undamped: that two readings look at the same thing makes it worse if they disagree.
std::vector<double> joint_undamped(const std::vector<WeighedReading>& readings, std::size_t candidates,
                                   std::size_t but) {
    std::vector<WeighedReading> whole = readings;
    for (WeighedReading& reading : whole) reading.share = 1;
    return joint(whole, candidates, but);
}

// By how much less probable the readings are together than each for itself, in decibans; negative where they expect one
// another.
double surprise_of(const Belief& belief, std::size_t but) {
    std::vector<double> alone;
    for (std::size_t i = 0; i < belief.readings.size(); ++i) {
        if (i != but) alone.push_back(log_evidence(belief.prior, belief.readings[i].log_likelihoods));
    }
    std::sort(alone.begin(), alone.end());
    const double apart = std::accumulate(alone.begin(), alone.end(), 0.0);
    return kDecibansPerNat *
           (apart - log_evidence(belief.prior, joint_undamped(belief.readings, belief.prior.size(), but)));
}

// By how much the candidate that explains two readings best falls short of those that explain each best, in decibans.
double disagreement_of(const WeighedReading& a, const WeighedReading& b) {
    double both = a.log_likelihoods.front() + b.log_likelihoods.front();
    for (std::size_t i = 0; i < a.log_likelihoods.size(); ++i) {
        both = std::max(both, a.log_likelihoods[i] + b.log_likelihoods[i]);
    }
    const double best = *std::max_element(a.log_likelihoods.begin(), a.log_likelihoods.end()) +
                        *std::max_element(b.log_likelihoods.begin(), b.log_likelihoods.end());
    return kDecibansPerNat * (best - both);
}

// Pairs are held against one another up to this many readings; beyond, all of them together must do.
constexpr std::size_t kMostPaired = 64;

double conflict_of(const Belief& belief, std::size_t but) {
    double conflict = surprise_of(belief, but);
    if (belief.readings.size() > kMostPaired) return conflict;
    for (std::size_t i = 0; i < belief.readings.size(); ++i) {
        for (std::size_t k = i + 1; k < belief.readings.size(); ++k) {
            if (i == but || k == but) continue;
            conflict = std::max(conflict, disagreement_of(belief.readings[i], belief.readings[k]));
        }
    }
    return conflict;
}

// Readings without which there is no contradiction; where no single one is to blame, none is named. The search goes
// with the square of their number, so it ends where nobody would read the answer.
void find_odd_ones(const evidence::EvidenceData& data, Belief& belief) {
    constexpr std::size_t kMostBlamed = 32;
    if (belief.readings.size() > kMostBlamed) return;
    struct Without {
        std::size_t index;
        double conflict;
    };
    std::vector<Without> without;
    for (std::size_t i = 0; i < belief.readings.size(); ++i) {
        const double rest = conflict_of(belief, i);
        if (rest < data.judging.conflict) without.push_back({i, rest});
    }
    std::stable_sort(without.begin(), without.end(),
                     [](const Without& a, const Without& b) { return a.conflict < b.conflict; });
    for (const Without& one : without) belief.odd_ones.push_back(one.index);
}

}  // namespace

bool counts(const evidence::EvidenceData& data, std::size_t frame, const evidence::Reading& reading,
            bool sample_is_worn) noexcept {
    if (!sample_is_worn) return true;
    const evidence::WhenWorn when_worn = data.methods[reading.method].when_worn;
    const bool behaviour = data.frames[frame].candidates.front().is == 0;
    return when_worn == evidence::WhenWorn::counts || (when_worn == evidence::WhenWorn::lowers && !behaviour);
}

Belief believe(const evidence::EvidenceData& data, std::size_t frame, const evidence::PartRecord& part,
               const std::vector<double>& priors, const Counting& counting) {
    Belief belief;
    belief.frame = frame;
    belief.prior = priors;
    for (std::size_t i = 0; i < part.readings.size(); ++i) {
        if (counting.only != kNone && i != counting.only) continue;
        if (i == counting.left_out || !counts(data, frame, part.readings[i], counting.sample_is_worn)) continue;
        std::vector<double> values = log_likelihoods(data, frame, part.readings[i]);
        if (!values.empty()) belief.readings.push_back({i, 1, std::move(values)});
    }
    belief.posterior = priors;
    if (belief.readings.empty()) return belief;

    damp(data, part, belief.readings);
    const std::vector<double> sums = joint(belief.readings, priors.size(), kNone);
    const double total = log_evidence(priors, sums);
    for (std::size_t i = 0; i < priors.size(); ++i) belief.posterior[i] = priors[i] * std::exp(sums[i] - total);
    if (!counting.with_conflict) return belief;
    belief.conflict = std::max(0.0, conflict_of(belief, kNone));
    belief.contradictory = belief.conflict >= data.judging.conflict;
    if (belief.contradictory) find_odd_ones(data, belief);
    return belief;
}

bool moved(const Belief& belief) noexcept {
    constexpr double kLeast = 0.005;
    for (std::size_t i = 0; i < belief.prior.size(); ++i) {
        if (std::abs(belief.posterior[i] - belief.prior[i]) >= kLeast) return true;
    }
    return false;
}

std::vector<double> priors_of(const evidence::EvidenceData& data, std::size_t frame,
                              const evidence::DossierData& dossier) {
    for (const evidence::OwnPrior& own : dossier.priors) {
        if (own.frame == frame) return own.prior;
    }
    std::vector<double> priors;
    for (const evidence::Candidate& candidate : data.frames[frame].candidates) priors.push_back(candidate.prior);
    return priors;
}

}  // namespace grainside::identify
