// Samples of what one part may be, for planning: each holds a possible truth and moves its beliefs by the outcomes that
// this truth brings forth. Deterministic: a fixed seed, and no distribution of the standard library, whose results
// differ between implementations.
#ifndef GRAINSIDE_IDENTIFY_SAMPLED_PART_H
#define GRAINSIDE_IDENTIFY_SAMPLED_PART_H

#include <cstddef>
#include <cstdint>
#include <random>
#include <vector>

#include "evidence/evidence_data.h"
#include "identify/part_beliefs.h"
#include "identify/question.h"

namespace grainside::identify {

// Of one part and the questions about it. Not thread-safe.
class SampledPart {
public:
    // All references must outlive it.
    SampledPart(const evidence::EvidenceData& data, const PartEvidence& part, std::vector<const Question*> questions,
                std::uint64_t seed);

    bool can_make(std::size_t method) const noexcept { return possible_[method]; }
    // Expected bits about each question, in their order, over the samples as they stand.
    std::vector<double> bits_of(std::size_t method) const;
    // Every sample takes an outcome of `method`, which is not possible afterwards.
    void make(std::size_t method);
    // The expected share of samples in which each question is settled, summed over the questions.
    double decided() const;

private:
    struct FrameState {
        std::vector<double> belief;  // by candidate
        std::size_t truth = 0;
    };
    struct Sample {
        std::vector<FrameState> frames;           // in the order of frames_
        std::vector<std::vector<double>> limits;  // [question][limit]: chance that it speaks for the claim
        std::vector<std::vector<bool>> limit_truth;
        std::vector<bool> settled;  // by question, as the beliefs stand
    };

    double uniform();
    std::size_t slot_of(std::size_t frame) const noexcept;
    bool is_settled(const Sample& sample, std::size_t question) const;
    bool one_candidate_stands(const Sample& sample, const Question& question) const;
    Bearing frames_decide(const Sample& sample, const Question& question) const;
    void note_speaking(std::size_t method);
    void note_settled();
    void take_outcome(Sample& sample, std::size_t method);

    const evidence::EvidenceData& data_;
    std::vector<const Question*> questions_;
    std::vector<std::size_t> frames_;  // that any question asks, or that lie outside of one that does
    std::vector<bool> possible_;       // by method
    std::vector<std::size_t> looks_;   // methods that were made or are on record; one entry each
    std::vector<Sample> samples_;
    std::vector<std::vector<double>> priors_;  // in the order of frames_, as before any reading
    std::vector<bool> read_;                   // in the order of frames_: a test on record or made speaks of it
    std::vector<bool> waiting_;                // by question: open until a test that speaks of it is made
    std::mt19937_64 random_;
};

}  // namespace grainside::identify

#endif  // GRAINSIDE_IDENTIFY_SAMPLED_PART_H
