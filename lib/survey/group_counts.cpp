#include "survey/group_counts.h"

#include <algorithm>

namespace grainside::survey {

void GroupCounts::add(const ListingCounts& listing) {
    ++listings;
    claims += listing.claims;
    findings += listing.findings;
    ++by_worst[static_cast<std::size_t>(listing.worst)];
    for (const std::uint64_t wording : listing.wordings) wordings.add(wording);
    for (const std::uint32_t rule : listing.rules) add_rule(rule, 1);
}

void GroupCounts::merge(const GroupCounts& other) {
    listings += other.listings;
    claims += other.claims;
    findings += other.findings;
    for (std::size_t grade = 0; grade < by_worst.size(); ++grade) by_worst[grade] += other.by_worst[grade];
    wordings.merge(other.wordings);
    for (const auto& [rule, count] : other.rules) add_rule(rule, count);
}

void GroupCounts::add_rule(std::uint32_t rule, std::uint64_t listings_of_it) {
    const auto at = std::lower_bound(rules.begin(), rules.end(), rule,
                                     [](const auto& entry, std::uint32_t sought) { return entry.first < sought; });
    if (at != rules.end() && at->first == rule) {
        at->second += listings_of_it;
    } else {
        rules.insert(at, {rule, listings_of_it});
    }
}

}  // namespace grainside::survey
