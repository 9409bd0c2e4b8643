#include "identify/learn.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "identify/likelihood.h"
#include "identify/posterior.h"

namespace grainside::identify {
namespace {

using evidence::DossierData;
using evidence::EvidenceData;

// Method, frame, candidate to counts by outcome.
using Counts = std::map<std::tuple<std::size_t, std::size_t, std::size_t>, std::vector<std::size_t>>;

const evidence::PartRecord* record_of(const DossierData& dossier, Part part) {
    for (const evidence::PartRecord& record : dossier.parts) {
        if (record.part == part) return &record;
    }
    return nullptr;
}

void count(const EvidenceData& data, const DossierData& dossier, Counts& table) {
    for (const evidence::ConfirmedPart& truth : dossier.confirmed) {
        const evidence::PartRecord* record = record_of(dossier, truth.part);
        if (record == nullptr) continue;
        for (const evidence::Reading& reading : record->readings) {
            const evidence::Method& method = data.methods[reading.method];
            if (reading.outcome == evidence::kNone || table_for(method, truth.frame) == nullptr ||
                !counts(data, truth.frame, reading, dossier.worn())) {
                continue;
            }
            auto& row = table[{reading.method, truth.frame, truth.candidate}];
            row.resize(method.outcomes.size(), 0);
            ++row[reading.outcome];
        }
    }
}

std::vector<double> row_of(const EvidenceData& data, std::size_t method, std::size_t frame, std::size_t candidate) {
    const std::size_t outcomes = data.methods[method].outcomes.size();
    const auto first =
        table_for(data.methods[method], frame)->chance.begin() + static_cast<std::ptrdiff_t>(candidate * outcomes);
    return {first, first + static_cast<std::ptrdiff_t>(outcomes)};
}

std::vector<double> posterior_mean(const std::vector<double>& before, const std::vector<std::size_t>& counts,
                                   double weight) {
    double total = weight;
    for (const std::size_t seen : counts) total += static_cast<double>(seen);
    std::vector<double> after;
    for (std::size_t i = 0; i < before.size(); ++i) {
        after.push_back((weight * before[i] + static_cast<double>(counts[i])) / total);
    }
    return after;
}

void apply(const Counts& counts, double weight, EvidenceData& data) {
    for (const auto& [key, seen] : counts) {
        const auto [method, frame, candidate] = key;
        const std::vector<double> after = posterior_mean(row_of(data, method, frame, candidate), seen, weight);
        for (evidence::OutcomeTable& table : data.methods[method].tables) {
            if (table.frame != frame) continue;
            std::copy(after.begin(), after.end(),
                      table.chance.begin() + static_cast<std::ptrdiff_t>(candidate * after.size()));
        }
    }
}

class Scores {
public:
    void add(const std::vector<double>& predicted, std::size_t truth) {
        ++result_.cases;
        for (std::size_t i = 0; i < predicted.size(); ++i) {
            const double came_true = i == truth ? 1 : 0;
            result_.brier += (predicted[i] - came_true) * (predicted[i] - came_true);
            const auto place = static_cast<std::size_t>(predicted[i] * static_cast<double>(kReliabilityBins));
            ReliabilityBin& bin = result_.bins[std::min(place, kReliabilityBins - 1)];
            ++bin.predictions;
            bin.mean_predicted += predicted[i];
            bin.observed += came_true;
        }
    }

    Calibration take() {
        if (result_.cases > 0) result_.brier /= static_cast<double>(result_.cases);
        for (ReliabilityBin& bin : result_.bins) {
            if (bin.predictions == 0) continue;
            bin.mean_predicted /= static_cast<double>(bin.predictions);
            bin.observed /= static_cast<double>(bin.predictions);
        }
        return result_;
    }

private:
    Calibration result_;
};

void score(const EvidenceData& data, const DossierData& dossier, Scores* prior_only, Scores& with_readings) {
    for (const evidence::ConfirmedPart& truth : dossier.confirmed) {
        const evidence::PartRecord* record = record_of(dossier, truth.part);
        if (record == nullptr) continue;
        const Belief belief =
            believe(data, truth.frame, *record, priors_of(data, truth.frame, dossier), {dossier.worn()});
        if (belief.readings.empty()) continue;
        if (prior_only != nullptr) prior_only->add(belief.prior, truth.candidate);
        with_readings.add(belief.posterior, truth.candidate);
    }
}

}  // namespace

Learnt learn(const EvidenceData& data, std::span<const DossierData* const> dossiers, double asked_weight) {
    // Less than nothing, and what is no number, would leave rows that are none.
    constexpr double kLeast = 1e-3;
    constexpr double kMost = 1e9;
    const double weight = std::fmin(std::fmax(asked_weight, kLeast), kMost);
    Counts all;
    for (const DossierData* dossier : dossiers) count(data, *dossier, all);
    Learnt learnt;
    for (const auto& [key, seen] : all) {
        const auto [method, frame, candidate] = key;
        std::vector<double> before = row_of(data, method, frame, candidate);
        std::vector<double> after = posterior_mean(before, seen, weight);
        learnt.rows.push_back({method, frame, candidate, seen, std::move(before), std::move(after)});
    }
    Scores prior_only;
    Scores book;
    Scores others;
    for (const DossierData* dossier : dossiers) {
        score(data, *dossier, &prior_only, book);
        // Its own readings taken out again: nobody is judged by what it taught.
        Counts own;
        count(data, *dossier, own);
        Counts rest = all;
        for (const auto& [key, seen] : own) {
            for (std::size_t i = 0; i < seen.size(); ++i) rest[key][i] -= seen[i];
        }
        EvidenceData without = data;
        apply(rest, weight, without);
        score(without, *dossier, nullptr, others);
    }
    learnt.prior_only = prior_only.take();
    learnt.book = book.take();
    learnt.learnt = others.take();
    return learnt;
}

}  // namespace grainside::identify
