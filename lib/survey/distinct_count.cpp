#include "survey/distinct_count.h"

#include <algorithm>
#include <cmath>

namespace grainside::survey {

std::uint64_t estimated_number(std::size_t k, std::uint64_t kth) {
    const double share = std::ldexp(static_cast<double>(kth) + 1, -64);
    return static_cast<std::uint64_t>(std::llround(static_cast<double>(k - 1) / share));
}

void DistinctCount::add(std::uint64_t hash) {
    if (smallest_.size() == most_ && hash > smallest_.back()) {
        more_ = true;
        return;
    }
    const auto at = std::lower_bound(smallest_.begin(), smallest_.end(), hash);
    if (at != smallest_.end() && *at == hash) return;
    smallest_.insert(at, hash);
    if (smallest_.size() <= most_) return;
    smallest_.pop_back();
    more_ = true;
}

void DistinctCount::merge(const DistinctCount& other) {
    for (const std::uint64_t hash : other.smallest_) add(hash);
    more_ = more_ || other.more_;
}

SurveyDistinct DistinctCount::value() const {
    if (!more_) return {smallest_.size(), false};
    return {std::max<std::uint64_t>(estimated_number(most_, smallest_.back()), most_ + 1), true};
}

}  // namespace grainside::survey
