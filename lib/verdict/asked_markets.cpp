#include "verdict/asked_markets.h"

#include <utility>

#include "evidence/region_market.h"

namespace grainside::verdict {

std::span<const std::string> markets_of(const Listing& listing, std::span<const std::string> asked,
                                        std::vector<std::string>& region) {
    if (!asked.empty()) return asked;
    region.clear();
    std::string market = evidence::market_of_region(listing.region);
    if (!market.empty()) region.push_back(std::move(market));
    return region;
}

}  // namespace grainside::verdict
