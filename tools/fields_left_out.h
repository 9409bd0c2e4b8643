// What is told of fields that were too long to be read.
#ifndef GRAINSIDE_TOOLS_FIELDS_LEFT_OUT_H
#define GRAINSIDE_TOOLS_FIELDS_LEFT_OUT_H

#include <cstdint>
#include <optional>

#include "grainside/listing.h"
#include "grainside/result.h"

namespace grainside::tools {

// `count` is CheckResult::fields_too_long; nothing where it is 0.
std::optional<Issue> fields_left_out(const Listing& listing, std::uint32_t count);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_FIELDS_LEFT_OUT_H
