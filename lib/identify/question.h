// What a plan of tests is to settle: claims, each as the frames and limits of its part look at it. Plain data.
#ifndef GRAINSIDE_IDENTIFY_QUESTION_H
#define GRAINSIDE_IDENTIFY_QUESTION_H

#include <cstddef>
#include <string>
#include <vector>

#include "grainside/claim.h"
#include "identify/part_beliefs.h"

namespace grainside::identify {

// A limit that the claim has to meet, and how sure it is from the readings on record which side the quantity lies on.
struct LimitQuestion {
    std::string quantity;
    double chance = 0.5;  // that the limit speaks for the claim; 0.5 where nothing was read
};

struct Question {
    Part part = Part::body;
    ConceptId says = 0;            // 0: what is it at all (no listing)
    std::vector<FrameView> views;  // empty where only limits decide
    std::vector<LimitQuestion> limits;
    // The verdict on it is open, whatever the beliefs by themselves seem to say (readings that contradict one another,
    // a value near its limit): only a test to come can settle it.
    bool open = false;
};

}  // namespace grainside::identify

#endif  // GRAINSIDE_IDENTIFY_QUESTION_H
