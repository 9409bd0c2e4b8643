// What a caller in C asks a check for.
#ifndef GRAINSIDE_C_INTERFACE_ASKED_H
#define GRAINSIDE_C_INTERFACE_ASKED_H

#include <vector>

#include "c_interface/border.h"
#include "grainside/checker.h"
#include "grainside/result.h"

namespace grainside::c_interface {

// Whether every pointer is there that must be. `options` may be nullptr.
bool is_whole(const GrainsideCheckOptions* options) noexcept;

// REQUIRES: is_whole. Issues: "unknown-market", "no-such-day".
CheckOptions check_options_of(const GrainsideCheckOptions* options, const RuleBook& book, std::vector<Issue>& issues);

// An issue where `day` is neither empty nor a day.
void require_day(std::string_view day, std::vector<Issue>& issues);

}  // namespace grainside::c_interface

#endif  // GRAINSIDE_C_INTERFACE_ASKED_H
