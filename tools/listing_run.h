// Going through the listings of all inputs, in the order of the call.
#ifndef GRAINSIDE_TOOLS_LISTING_RUN_H
#define GRAINSIDE_TOOLS_LISTING_RUN_H

#include <cstdint>
#include <functional>
#include <optional>

#include "call_options.h"
#include "diagnostics.h"
#include "grainside/listing.h"

namespace grainside::tools {

// Calls `handle` with each listing and the input that it stands in, as the call names it, until it returns false.
// Inputs and records that cannot be read are reported and the rest goes on.
void for_each_listing(const SharedOptions& options, Diagnostics& diagnostics,
                      const std::function<bool(const Listing&, const std::string& input)>& handle);

// Of fields that were too long to be read; nothing where there are none.
std::optional<Issue> fields_left_out(const Listing& listing, std::uint32_t fields_too_long);
// Reports fields that were too long to be read.
void report_fields_left_out(const Listing& listing, std::uint32_t fields_too_long, Diagnostics& diagnostics);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_LISTING_RUN_H
