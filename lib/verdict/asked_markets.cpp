#include "verdict/asked_markets.h"

#include <utility>

namespace grainside::verdict {

std::span<const std::string> markets_of(const Listing& listing, std::span<const std::string> asked,
                                        std::vector<std::string>& region) {
    if (!asked.empty()) return asked;
    region.clear();
    if (listing.region.size() == 2) {
        std::string code(listing.region);
        for (char& c : code) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        if (code == "gb") code = "uk";
        region.push_back(std::move(code));
    }
    return region;
}

}  // namespace grainside::verdict
