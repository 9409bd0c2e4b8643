// Regions that listings state and for which the book has no market: told once at the end, because a whole catalog may
// state the same one.
#ifndef GRAINSIDE_TOOLS_UNKNOWN_REGIONS_H
#define GRAINSIDE_TOOLS_UNKNOWN_REGIONS_H

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "diagnostics.h"
#include "grainside/checker.h"
#include "grainside/listing.h"
#include "grainside/rule_book.h"

namespace grainside::tools {

// What is told does not depend on the order in which listings are added or counts are merged. Not thread-safe.
class UnknownRegions {
public:
    // Where the call asks for markets, nobody asks what listings state.
    UnknownRegions(const RuleBook& book, const CheckOptions& options);

    void add(const Listing& listing);
    void add(const UnknownRegions& other);
    // As one warning, "unknown-region", if there is anything to tell.
    void report(Diagnostics& diagnostics) const;

private:
    void note(std::string region, std::uint64_t listings);

    std::vector<std::string> known_;
    bool is_asked_;
    std::uint64_t listings_ = 0;
    // With the listings of each. Only the first ones by name are kept: what falls out of them never comes back.
    std::map<std::string, std::uint64_t> regions_;
    bool has_others_ = false;
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_UNKNOWN_REGIONS_H
