// The markets of the book that a listing's region names. Thread-safe.
#ifndef GRAINSIDE_EVIDENCE_REGION_MARKET_H
#define GRAINSIDE_EVIDENCE_REGION_MARKET_H

#include <string>
#include <string_view>
#include <vector>

namespace grainside::evidence {

// Takes the first word off `rest`, which stands for a region; words are set apart by spaces or commas. Empty at the
// end.
std::string_view take_region(std::string_view& rest);

// The market that a region of two letters is, in lower case, "gb" as "uk".
std::string market_of_code(std::string_view code);

// The regions of two letters among the words of `region`, each once, in their order, as markets.
std::vector<std::string> markets_of_region(std::string_view region);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_REGION_MARKET_H
