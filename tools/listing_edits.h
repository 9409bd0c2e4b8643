// The edits of a listing as bytes of the file that it was read from.
#ifndef GRAINSIDE_TOOLS_LISTING_EDITS_H
#define GRAINSIDE_TOOLS_LISTING_EDITS_H

#include <vector>

#include "grainside/listing.h"
#include "grainside/reword.h"
#include "grainside/source_place.h"
#include "source_edits.h"

namespace grainside::tools {

// In the order of the file, with the escapes that a JSON string needs.
std::vector<SourceEdit> listing_edits(const Listing& listing, const Rewording& rewording, SourcePlaces& places);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_LISTING_EDITS_H
