// The market of the book that a listing's region names. Thread-safe.
#ifndef GRAINSIDE_EVIDENCE_REGION_MARKET_H
#define GRAINSIDE_EVIDENCE_REGION_MARKET_H

#include <string>
#include <string_view>

namespace grainside::evidence {

// A region of two letters in lower case, "gb" as "uk"; empty for any other text.
std::string market_of_region(std::string_view region);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_REGION_MARKET_H
