// Learning from dossiers whose truth a laboratory confirmed (their `confirmed` section): likelihoods as the dossiers
// would have them, and how far beliefs can be trusted.
//
//     std::vector<grainside::Dossier> dossiers;
//     for (const char* const file : {"first.yaml", "second.yaml"}) {
//         auto dossier = grainside::Dossier::parse(file,
//                                                  "sample: {what: Belt}\n"
//                                                  "parts: {body: {readings: [{method: cut-edge, "
//                                                  "outcome: yarns-under-coat}]}}\n"
//                                                  "confirmed: {body: {sheet: pu-coated-fabric}}\n",
//                                                  ".", evidence);
//         if (!dossier) return 2;
//         dossiers.push_back(std::move(dossier).value());
//     }
//     const grainside::Learning learning = grainside::learn(evidence, dossiers, 20);
//     for (const grainside::LearntLikelihood& learnt : learning.likelihoods) {
//         for (const grainside::LearntOutcome& outcome : learnt.outcomes) {
//             if (outcome.seen == 0) continue;
//             std::cout << learnt.method << " of " << learnt.candidate << ": " << outcome.outcome << " seen "
//                       << outcome.seen << " times, " << (outcome.after > outcome.before ? "rises" : "falls") << '\n';
//         }
//     }
//     // prints: cut-edge of pu-coated-fabric: yarns-under-coat seen 2 times, rises
//
// Nothing is written into a rule book: who keeps rules/methods decides what to take over. A pure function; thread-safe.
#ifndef GRAINSIDE_LEARN_H
#define GRAINSIDE_LEARN_H

#include <cstddef>
#include <span>
#include <string>
#include <vector>

#include "grainside/dossier.h"
#include "grainside/evidence_book.h"

namespace grainside {
inline namespace v0 {

// How often a material gave an outcome, 0 to 1, by the book and with the confirmed readings.
struct LearntOutcome {
    std::string outcome;
    std::size_t seen = 0;
    double before = 0;
    double after = 0;
};
struct LearntLikelihood {
    std::string method;
    std::string frame;
    std::string candidate;
    std::size_t seen = 0;  // confirmed readings in all
    std::vector<LearntOutcome> outcomes;
};

// Predictions of one tenth of the scale, and the share of them that came true.
struct ReliabilityLine {
    double from = 0;  // probabilities, 0 to 1
    double to = 0;
    std::size_t predictions = 0;
    double mean_predicted = 0;
    double came_true = 0;
};
struct CalibrationTable {
    std::size_t cases = 0;
    double brier = 0;                    // Brier (1950), for several categories: 0 is perfect, 2 is worst
    std::vector<ReliabilityLine> lines;  // those with predictions
};

struct Learning {
    std::size_t dossiers = 0;  // with something confirmed
    std::vector<LearntLikelihood> likelihoods;
    CalibrationTable without_readings;
    CalibrationTable by_the_book;
    // Each dossier by likelihoods that the others taught.
    CalibrationTable as_learnt;
};

// `weight`: how many readings the book's figures are worth beside the confirmed ones; taken into 0.001 to 1e9.
Learning learn(const EvidenceBook& book, std::span<const Dossier> dossiers, double weight);

}  // namespace v0
}  // namespace grainside

#endif  // GRAINSIDE_LEARN_H
