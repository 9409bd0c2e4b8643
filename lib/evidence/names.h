// The words for the small choices that method files make, in the order of their enumerators (evidence_data.h).
#ifndef GRAINSIDE_EVIDENCE_NAMES_H
#define GRAINSIDE_EVIDENCE_NAMES_H

#include <span>
#include <string_view>

#include "evidence/evidence_data.h"

namespace grainside::evidence {

std::span<const std::string_view> harm_names() noexcept;
std::span<const std::string_view> who_names() noexcept;
// "counts" is what stands where a file says nothing, and may be written too; so is "nothing" of `computes`, "table" of
// `likelihood_by`.
std::span<const std::string_view> when_worn_names() noexcept;
std::span<const std::string_view> computes_names() noexcept;
std::span<const std::string_view> likelihood_by_names() noexcept;

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_NAMES_H
