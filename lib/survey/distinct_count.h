// How many different texts there are, in bounded memory: exact up to a number, beyond it worked out from the smallest
// hashes seen (Bar-Yossef and others, "Counting distinct elements in a data stream", 2002: with the k-th smallest of
// hashes spread over 0 to 1 at v, there are about (k - 1) / v; the relative error is about 1 / sqrt(k)). Independent of
// the order and of how parts are merged. Not thread-safe.
#ifndef GRAINSIDE_SURVEY_DISTINCT_COUNT_H
#define GRAINSIDE_SURVEY_DISTINCT_COUNT_H

#include <cstddef>
#include <cstdint>
#include <vector>

#include "grainside/survey.h"

namespace grainside::survey {

// (k - 1) / v, where `kth` is the k-th smallest of the 64 bit hashes.
std::uint64_t estimated_number(std::size_t k, std::uint64_t kth);

class DistinctCount {
public:
    // REQUIRES: most > 1.
    explicit DistinctCount(std::size_t most) : most_(most) {}

    void add(std::uint64_t hash);
    void merge(const DistinctCount& other);
    SurveyDistinct value() const;

private:
    std::size_t most_;
    std::vector<std::uint64_t> smallest_;  // sorted
    bool more_ = false;
};

}  // namespace grainside::survey

#endif  // GRAINSIDE_SURVEY_DISTINCT_COUNT_H
