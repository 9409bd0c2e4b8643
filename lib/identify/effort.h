// What a test costs in all: its minutes, its fee and the harm it does, weighed by the book.
#ifndef GRAINSIDE_IDENTIFY_EFFORT_H
#define GRAINSIDE_IDENTIFY_EFFORT_H

#include "evidence/evidence_data.h"

namespace grainside::identify {

// In euro, at least 1 (taking the sample in hand costs something too); for ranking only.
inline double effort_of(const evidence::Judging& judging, const evidence::Method& method) noexcept {
    return 1 + judging.minute_weight * method.minutes + method.cost +
           judging.harm_weight[static_cast<std::size_t>(method.harm)];
}

}  // namespace grainside::identify

#endif  // GRAINSIDE_IDENTIFY_EFFORT_H
