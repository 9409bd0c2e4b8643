// What the readings of one part say about one frame's question: Bayes' theorem over its candidates.
//
// Readings that look at the same thing are not independent: sorted by how far each tells candidates apart, the second
// counts Judging::same_look of its logarithm, the third that share of the second's, and so on. The order of the
// readings in the dossier plays no part, and a reading that all candidates explain equally changes nothing.
#ifndef GRAINSIDE_IDENTIFY_POSTERIOR_H
#define GRAINSIDE_IDENTIFY_POSTERIOR_H

#include <cstddef>
#include <vector>

#include "evidence/dossier_data.h"
#include "evidence/evidence_data.h"

namespace grainside::identify {

// A reading as it counts in a frame.
struct WeighedReading {
    std::size_t reading = 0;              // index into PartRecord::readings
    double share = 1;                     // 0 to 1: what damping leaves of it
    std::vector<double> log_likelihoods;  // by candidate, natural, before damping
};

// Belief about one frame of one part.
struct Belief {
    std::size_t frame = 0;
    std::vector<double> prior;             // by candidate; adds up to 1
    std::vector<double> posterior;         // the same, given the readings
    std::vector<WeighedReading> readings;  // those that tell candidates apart or could, in written order
    // In decibans, never negative; the larger of two: how much less probable the readings are together than if each
    // stood alone (the conflict measure of Jensen, Chamberlain, Nordahl and Jensen, 1990, from memory), and how far the
    // candidate that explains two of them best falls short of those that explain each best.
    double conflict = 0;
    bool contradictory = false;         // conflict at or above Judging::conflict
    std::vector<std::size_t> odd_ones;  // indices into `readings` whose absence ends the contradiction, best first
};

// What of a part's readings counts.
struct Counting {
    bool sample_is_worn = false;
    std::size_t left_out = evidence::kNone;  // a reading (index into PartRecord::readings) that is not to count
    std::size_t only = evidence::kNone;      // the one that counts alone
    bool with_conflict = true;               // else Belief::conflict and what follows from it stay empty
};

// On a worn sample a reading that wear spoils says nothing, and one that wear lowers says nothing of how the part
// behaved when it was new.
bool counts(const evidence::EvidenceData& data, std::size_t frame, const evidence::Reading& reading,
            bool sample_is_worn) noexcept;

// `priors`: of the frame's candidates, adding up to 1. Thread-safe.
Belief believe(const evidence::EvidenceData& data, std::size_t frame, const evidence::PartRecord& part,
               const std::vector<double>& priors, const Counting& counting = {});

// The readings changed what was believed; a question that they left where it was tells nobody anything.
bool moved(const Belief& belief) noexcept;

// The frame's priors: those of the dossier, else of the book.
std::vector<double> priors_of(const evidence::EvidenceData& data, std::size_t frame,
                              const evidence::DossierData& dossier);

}  // namespace grainside::identify

#endif  // GRAINSIDE_IDENTIFY_POSTERIOR_H
