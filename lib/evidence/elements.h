// The symbols of the chemical elements that a composition may name.
#ifndef GRAINSIDE_EVIDENCE_ELEMENTS_H
#define GRAINSIDE_EVIDENCE_ELEMENTS_H

#include <span>
#include <string_view>

namespace grainside::evidence {

// Hydrogen to uranium in the order of their numbers, in the letters of the IUPAC ("Zn", never "ZN"). Constant.
std::span<const std::string_view> element_symbols() noexcept;
bool is_element(std::string_view symbol) noexcept;

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_ELEMENTS_H
