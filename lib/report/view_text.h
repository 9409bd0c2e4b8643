// Small pieces that the views for people share. Thread-safe.
#ifndef GRAINSIDE_REPORT_VIEW_TEXT_H
#define GRAINSIDE_REPORT_VIEW_TEXT_H

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "grainside/checker.h"
#include "grainside/report.h"

namespace grainside::report {

// ViewOptions::width within what the layout can do: at least 40.
std::size_t width_of(const ViewOptions& options);

// "tote-17, line 3", inert, for a heading of at most `width` cells.
std::string listing_heading(const Listing& listing, std::size_t width);

// "1 claim", "9 claims", "no claims".
std::string counted(std::uint64_t count, std::string_view one, std::string_view several);

// What a claim says, in concept ids: "not leather", "polyurethane, called leather", "made-in italy".
std::string statement_of(const RuleBook& book, const Claim& claim);

// A line for fields that were left out; nothing where there are none.
void append_fields_left_out(std::string& out, const CheckResult& result);

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_VIEW_TEXT_H
