#include "evidence/region_market.h"

#include <algorithm>
#include <utility>

namespace grainside::evidence {

std::string_view take_region(std::string_view& rest) {
    constexpr std::string_view kGaps = " ,;\t\r\n";
    rest.remove_prefix(std::min(rest.find_first_not_of(kGaps), rest.size()));
    const std::string_view word = rest.substr(0, rest.find_first_of(kGaps));
    rest.remove_prefix(word.size());
    return word;
}

std::string market_of_code(std::string_view code) {
    std::string market(code);
    for (char& c : market) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    return market == "gb" ? "uk" : market;
}

std::vector<std::string> markets_of_region(std::string_view region) {
    std::vector<std::string> markets;
    for (std::string_view word = take_region(region); !word.empty(); word = take_region(region)) {
        if (word.size() != 2) continue;
        std::string market = market_of_code(word);
        if (std::find(markets.begin(), markets.end(), market) == markets.end()) markets.push_back(std::move(market));
    }
    return markets;
}

}  // namespace grainside::evidence
