#include "survey/worst_listings.h"

#include <compare>
#include <iterator>
#include <tuple>
#include <utility>

#include "survey/natural_order.h"

namespace grainside::survey {

bool WorseListing::operator()(const SurveyListing& a, const SurveyListing& b) const {
    // The one with more findings first.
    if (a.worst != b.worst || a.findings != b.findings) {
        return std::tie(a.worst, b.findings) < std::tie(b.worst, a.findings);
    }
    if (a.id != b.id) return std::is_lt(natural_order(a.id, b.id));
    return std::tie(a.seller, b.by_grade, a.words, a.rule) < std::tie(b.seller, a.by_grade, b.words, b.rule);
}

bool WorstListings::has_room_for(Grade worst, std::uint64_t findings) const noexcept {
    if (most_ == 0) return false;
    if (kept_.size() < most_) return true;
    const SurveyListing& last = *std::prev(kept_.end());
    return worst < last.worst || (worst == last.worst && findings >= last.findings);
}

void WorstListings::add(SurveyListing listing) {
    kept_.insert(std::move(listing));
    while (kept_.size() > most_) kept_.erase(std::prev(kept_.end()));
}

void WorstListings::merge(WorstListings&& other) {
    kept_.merge(other.kept_);
    while (kept_.size() > most_) kept_.erase(std::prev(kept_.end()));
}

}  // namespace grainside::survey
