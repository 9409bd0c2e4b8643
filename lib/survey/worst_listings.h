// The worst listings of many, in bounded memory. Independent of the order and of how parts are merged. Not thread-safe.
#ifndef GRAINSIDE_SURVEY_WORST_LISTINGS_H
#define GRAINSIDE_SURVEY_WORST_LISTINGS_H

#include <cstddef>
#include <set>
#include <vector>

#include "grainside/survey.h"

namespace grainside::survey {

// By grade, number of findings, id in its natural order; then by whatever else differs.
struct WorseListing {
    bool operator()(const SurveyListing& a, const SurveyListing& b) const;
};

class WorstListings {
public:
    explicit WorstListings(std::size_t most) : most_(most) {}

    // False where a listing like this would not be kept, whatever its id: spares the work of telling it.
    bool has_room_for(Grade worst, std::uint64_t findings) const noexcept;
    void add(SurveyListing listing);
    void merge(WorstListings&& other);
    std::vector<SurveyListing> list() const { return {kept_.begin(), kept_.end()}; }

private:
    std::size_t most_;
    std::multiset<SurveyListing, WorseListing> kept_;
};

}  // namespace grainside::survey

#endif  // GRAINSIDE_SURVEY_WORST_LISTINGS_H
