// The markets of the book that a listing's region names. Thread-safe.
#ifndef GRAINSIDE_EVIDENCE_REGION_MARKET_H
#define GRAINSIDE_EVIDENCE_REGION_MARKET_H

#include <string>
#include <string_view>
#include <vector>

namespace grainside::evidence {

// The regions of two letters among the words of `region`, each once, in their order and in lower case, "gb" as "uk";
// words are set apart by spaces or commas.
std::vector<std::string> markets_of_region(std::string_view region);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_REGION_MARKET_H
