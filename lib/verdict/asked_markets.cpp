#include "verdict/asked_markets.h"

#include "evidence/region_market.h"

namespace grainside::verdict {

std::span<const std::string> markets_of(const Listing& listing, std::span<const std::string> asked,
                                        std::vector<std::string>& region) {
    if (!asked.empty()) return asked;
    // Most listings name none, and then nothing is allocated.
    if (listing.region.empty()) {
        region.clear();
    } else {
        region = evidence::markets_of_region(listing.region);
    }
    return region;
}

}  // namespace grainside::verdict
