// Learning from dossiers whose truth a laboratory confirmed: better likelihoods, and how far the beliefs can be
// trusted.
//
// A row of likelihoods is a multinomial distribution with a Dirichlet prior around the book's figures, worth `weight`
// readings; each confirmed reading adds one count, and the mean of the posterior is the new row (Gelman and others,
// Bayesian Data Analysis, 3.4; from memory). Calibration: the score of Brier (Monthly Weather Review 78, 1950, in its
// form for several categories: 0 is perfect, 2 is worst) and a table of predicted against observed.
#ifndef GRAINSIDE_IDENTIFY_LEARN_H
#define GRAINSIDE_IDENTIFY_LEARN_H

#include <array>
#include <cstddef>
#include <span>
#include <vector>

#include "evidence/dossier_data.h"
#include "evidence/evidence_data.h"

namespace grainside::identify {

// One row that was seen at least once.
struct LearntRow {
    std::size_t method = 0;
    std::size_t frame = 0;
    std::size_t candidate = 0;
    std::vector<std::size_t> counts;  // by outcome
    std::vector<double> before;       // by outcome, 0 to 1: the book's
    std::vector<double> after;        // the same, with the counts
};

// Predictions between two tenths, and how often they came true.
struct ReliabilityBin {
    std::size_t predictions = 0;
    double mean_predicted = 0;
    double observed = 0;  // share that came true
};
inline constexpr std::size_t kReliabilityBins = 10;

struct Calibration {
    std::size_t cases = 0;  // confirmed parts with a reading on the question
    double brier = 0;
    std::array<ReliabilityBin, kReliabilityBins> bins;
};

struct Learnt {
    std::vector<LearntRow> rows;  // by method, frame, candidate
    Calibration prior_only;       // beliefs without any reading
    Calibration book;             // with the book's likelihoods
    Calibration learnt;           // with likelihoods learnt from the other dossiers only (leave one out)
};

// `asked_weight` is taken into 0.001 to 1e9; what is no number counts as the least. Thread-safe.
Learnt learn(const evidence::EvidenceData& data, std::span<const evidence::DossierData* const> dossiers,
             double asked_weight);

}  // namespace grainside::identify

#endif  // GRAINSIDE_IDENTIFY_LEARN_H
