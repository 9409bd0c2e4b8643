// Which tests to make, and in which order, until the questions are settled or nothing helps.
//
// The worth of a test is the information that it is expected to give about the open questions, per effort: its minutes,
// its cost and the harm it does, weighed by Judging. Outcomes are not known beforehand, so the plan is made over a
// fixed number of samples of what the parts may be (common random numbers from a fixed seed): after each chosen test
// every sample takes an outcome and moves its beliefs, and the next test is chosen by what it tells on top. Harmless
// tests come first in the finished plan. The same dossier and book give the same plan, but for last digits of the C
// library where two tests are worth the same.
#ifndef GRAINSIDE_IDENTIFY_PLAN_H
#define GRAINSIDE_IDENTIFY_PLAN_H

#include <cstddef>
#include <vector>

#include "evidence/evidence_data.h"
#include "identify/question.h"

namespace grainside::identify {

struct PlanStep {
    std::size_t method = 0;
    Part part = Part::body;
    double bits = 0;                     // expected on top of the steps chosen before it
    std::vector<std::size_t> questions;  // indices of those that it tells something about
};

struct Plan {
    std::vector<PlanStep> steps;  // harmless first, then by worth
    std::size_t next = 0;         // the step to make first where only one is made: most bits per effort
    double decided_now = 0;       // share of the questions that are settled by the readings on record
    double decided_after = 0;     // the expected share after all steps
    double minutes = 0;
    double cost = 0;  // euro
};

// `questions` name parts that are among `parts`. Tests that are on record for a part are not planned again, but for
// those that measure what an open limit asks. Thread-safe.
Plan make_plan(const evidence::EvidenceData& data, const std::vector<PartEvidence>& parts,
               const std::vector<Question>& questions);

}  // namespace grainside::identify

#endif  // GRAINSIDE_IDENTIFY_PLAN_H
