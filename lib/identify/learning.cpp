// grainside::learn: what identify/learn.h finds, in the words of the book.
#include "grainside/learn.h"

#include "evidence/dossier_data.h"
#include "evidence/evidence_data.h"
#include "identify/learn.h"

namespace grainside {
inline namespace v0 {

namespace {

CalibrationTable table_of(const identify::Calibration& calibration) {
    CalibrationTable table;
    table.cases = calibration.cases;
    table.brier = calibration.brier;
    constexpr double kWidth = 1 / static_cast<double>(identify::kReliabilityBins);
    for (std::size_t i = 0; i < identify::kReliabilityBins; ++i) {
        const identify::ReliabilityBin& bin = calibration.bins[i];
        if (bin.predictions == 0) continue;
        const auto from = static_cast<double>(i) * kWidth;
        table.lines.push_back({from, from + kWidth, bin.predictions, bin.mean_predicted, bin.observed});
    }
    return table;
}

}  // namespace

Learning learn(const EvidenceBook& book, std::span<const Dossier> dossiers, double weight) {
    const evidence::EvidenceData& data = book.data();
    std::vector<const evidence::DossierData*> records;
    Learning learning;
    for (const Dossier& dossier : dossiers) {
        if (dossier.data().confirmed.empty()) continue;
        records.push_back(&dossier.data());
        ++learning.dossiers;
    }
    const identify::Learnt learnt = identify::learn(data, records, weight);
    for (const identify::LearntRow& row : learnt.rows) {
        LearntLikelihood told;
        told.method = data.methods[row.method].id;
        told.frame = data.frames[row.frame].id;
        told.candidate = data.frames[row.frame].candidates[row.candidate].id;
        for (std::size_t i = 0; i < row.counts.size(); ++i) {
            told.seen += row.counts[i];
            told.outcomes.push_back(
                {data.methods[row.method].outcomes[i].id, row.counts[i], row.before[i], row.after[i]});
        }
        learning.likelihoods.push_back(std::move(told));
    }
    learning.without_readings = table_of(learnt.prior_only);
    learning.by_the_book = table_of(learnt.book);
    learning.as_learnt = table_of(learnt.learnt);
    return learning;
}

}  // namespace v0
}  // namespace grainside
