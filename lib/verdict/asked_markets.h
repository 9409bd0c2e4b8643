// Which markets a listing is judged for.
#ifndef GRAINSIDE_VERDICT_ASKED_MARKETS_H
#define GRAINSIDE_VERDICT_ASKED_MARKETS_H

#include <span>
#include <string>
#include <vector>

#include "grainside/listing.h"

namespace grainside::verdict {

// Those that were asked for; where none were, all that the listing names, kept in `region`. Views into either.
std::span<const std::string> markets_of(const Listing& listing, std::span<const std::string> asked,
                                        std::vector<std::string>& region);

}  // namespace grainside::verdict

#endif  // GRAINSIDE_VERDICT_ASKED_MARKETS_H
