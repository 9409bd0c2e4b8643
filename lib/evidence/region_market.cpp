#include "evidence/region_market.h"

#include <algorithm>
#include <utility>

namespace grainside::evidence {

std::vector<std::string> markets_of_region(std::string_view region) {
    constexpr std::string_view kGaps = " ,;\t\r\n";
    std::vector<std::string> markets;
    for (std::size_t at = region.find_first_not_of(kGaps); at < region.size();) {
        const std::size_t end = std::min(region.find_first_of(kGaps, at), region.size());
        std::string code(region.substr(at, end - at));
        at = region.find_first_not_of(kGaps, end);
        if (code.size() != 2) continue;
        for (char& c : code) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        if (code == "gb") code = "uk";
        if (std::find(markets.begin(), markets.end(), code) == markets.end()) markets.push_back(std::move(code));
    }
    return markets;
}

}  // namespace grainside::evidence
