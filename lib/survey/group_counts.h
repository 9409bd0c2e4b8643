// What is counted of one group of listings: a seller's, a category's, a market's, all. Plain sums, so that the order
// does not matter. Not thread-safe.
#ifndef GRAINSIDE_SURVEY_GROUP_COUNTS_H
#define GRAINSIDE_SURVEY_GROUP_COUNTS_H

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "grainside/survey.h"
#include "survey/distinct_count.h"

namespace grainside::survey {

inline constexpr std::size_t kWordingsOfGroup = 512;  // exact up to here

// One listing as the groups see it.
struct ListingCounts {
    std::uint64_t claims = 0;
    std::uint64_t findings = 0;
    Grade worst = Grade::consistent;          // consistent: no finding
    std::span<const std::uint32_t> rules;     // that flagged something, each once, sorted
    std::span<const std::uint64_t> wordings;  // hashes of what was flagged
};

struct GroupCounts {
    std::string spelling;  // of its name
    std::uint64_t listings = 0;
    std::uint64_t claims = 0;
    std::uint64_t findings = 0;
    std::array<std::uint64_t, 6> by_worst{};
    DistinctCount wordings{kWordingsOfGroup};
    std::vector<std::pair<std::uint32_t, std::uint64_t>> rules;  // rule and listings in which it flagged, sorted

    void add(const ListingCounts& listing);
    void merge(const GroupCounts& other);

private:
    void add_rule(std::uint32_t rule, std::uint64_t listings_of_it);
};

}  // namespace grainside::survey

#endif  // GRAINSIDE_SURVEY_GROUP_COUNTS_H
