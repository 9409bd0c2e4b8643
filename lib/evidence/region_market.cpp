#include "evidence/region_market.h"

namespace grainside::evidence {

std::string market_of_region(std::string_view region) {
    if (region.size() != 2) return {};
    std::string code(region);
    for (char& c : code) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    if (code == "gb") code = "uk";
    return code;
}

}  // namespace grainside::evidence
