// Belief about all frames of one part, and what it makes of a claim.
#ifndef GRAINSIDE_IDENTIFY_PART_BELIEFS_H
#define GRAINSIDE_IDENTIFY_PART_BELIEFS_H

#include <cstddef>
#include <span>
#include <vector>

#include "evidence/dossier_data.h"
#include "evidence/evidence_data.h"
#include "identify/claim_bearing.h"
#include "identify/posterior.h"
#include "vocabulary/concept_tree.h"

namespace grainside::identify {

// Shares of belief, adding up to 1: the claim is true, is false, or nothing on record tells.
struct Truth {
    double holds = 0;
    double fails = 0;
    double open = 1;
};

// By frame of the book, in its order; a frame that cannot be asked of the part has no candidates in its belief.
using PartBeliefs = std::vector<Belief>;

// A part with what was read of it and what follows.
struct PartEvidence {
    evidence::PartRecord record;
    PartBeliefs beliefs;
    // By reading: the beliefs had it not been made, and had no other been made; empty beyond kMostWeighed.
    std::vector<PartBeliefs> without;
    std::vector<PartBeliefs> alone;
    bool worn = false;  // the sample
};

// Readings of one part up to which each is weighed by leaving it out; the work goes with the square of their number.
inline constexpr std::size_t kMostWeighed = 64;

PartEvidence evidence_of(const evidence::EvidenceData& data, const evidence::DossierData& dossier,
                         const evidence::PartRecord& part);

PartBeliefs believe_part(const evidence::EvidenceData& data, const evidence::DossierData& dossier,
                         const evidence::PartRecord& part, const Counting& counting = {});

// One frame's share in a claim.
struct FrameView {
    std::size_t frame = 0;
    std::vector<Bearing> bearings;        // by candidate
    std::size_t outer = evidence::kNone;  // the frame that tells whether the part is what this one asks for
    std::vector<bool> outer_within;       // by candidate of `outer`
    double inside = 1;                    // belief that it is, by the readings on record
};

// Belief that the part is what the view's frame asks for, from belief over the candidates of `outer`.
double inside_of(const FrameView& view, const std::vector<double>& outer_belief) noexcept;

// Sums the frames' views of one claim: what the first leaves open is split by those that ask more closely, and where a
// part is not what such a frame asks for, the claim is false.
class TruthSum {
public:
    // In the order of views_of. An empty `belief` says that nothing was read on the frame's question.
    void add(const FrameView& view, const std::vector<double>& belief, double inside);
    const Truth& truth() const noexcept { return truth_; }

private:
    Truth truth_;
    bool outer_asked_ = false;
};

// How a claim is looked at by the frames of one part: those without `within` first, then those that ask more closely.
// Empty where no frame asks. Bearings do not depend on the readings; `inside` does.
std::vector<FrameView> views_of(const vocabulary::ConceptTree& tree, const evidence::EvidenceData& data,
                                const PartBeliefs& beliefs, Part part, ConceptId says);

// By the readings on record; frames without a reading that tells anything leave all open.
Truth truth_of(const PartBeliefs& beliefs, const std::vector<FrameView>& views);

// The same with what is believed of such frames before any reading: for weighing a reading against its absence.
Truth truth_with_priors(const PartBeliefs& beliefs, const std::vector<FrameView>& views);

// The same before any of these readings.
Truth truth_before(const PartBeliefs& beliefs, const std::vector<FrameView>& views);

// What belief decides of a claim: `holds` or `fails` where its share is large enough and the readings alone would have
// carried it far enough from even odds; else `open`. A belief that was strong before any reading proves nothing.
Bearing decided_by(const Truth& before, const Truth& after, const evidence::Judging& judging) noexcept;

// Where a share of belief would stand had it been even before the readings that moved it from `before` to `after`.
double from_even_odds(double before, double after) noexcept;

// What one reading does for a claim whose truth is `with` all readings and `without` this one: ten times the decimal
// logarithm of the ratio of the odds (decibans). What is open counts half on either side; where no candidate makes the
// claim true, it counts for the claim, as far as that goes. Positive: for the claim.
double decibans_of(const Truth& with, const Truth& without) noexcept;

// The same for a share of belief.
double decibans_of(double with, double without) noexcept;

// Belief that the part is one of `concepts`: the sum over candidates that are, in any frame.
double belief_in(const vocabulary::ConceptTree& tree, const evidence::EvidenceData& data, const PartBeliefs& beliefs,
                 std::span<const ConceptId> concepts);

// Whether the frame's question arises at all: nobody asks which animal a cloth comes from. True where nothing was read
// of what the part is.
bool makes_sense(const vocabulary::ConceptTree& tree, const evidence::EvidenceData& data, const PartBeliefs& beliefs,
                 std::size_t frame);

}  // namespace grainside::identify

#endif  // GRAINSIDE_IDENTIFY_PART_BELIEFS_H
