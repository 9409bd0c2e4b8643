// The names under which readings and limits speak of quantities.
//
// A method's `reads` makes names of its own ("coat"). The fixed ones are `content`, a composition, whose elements are
// "content.Zn"; `fibre-share`, whose fibres are "fibre-share.cotton"; a colour `before`, whose coordinates are
// "before.L", "before.a", "before.b"; and what is computed. Pure functions, any number of threads.
#ifndef GRAINSIDE_EVIDENCE_QUANTITY_NAMES_H
#define GRAINSIDE_EVIDENCE_QUANTITY_NAMES_H

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "evidence/evidence_data.h"
#include "measure/unit.h"
#include "vocabulary/concept_tree.h"

namespace grainside::evidence {

inline constexpr std::string_view kContent = "content";
inline constexpr std::string_view kFibreShare = "fibre-share";
// What stands in `reads` for a unit where a colour is read.
inline constexpr std::string_view kColourUnit = "CIELAB";

struct ComputedQuantity {
    std::string_view name;
    measure::Dimension dimension;
};
// What a method that computes `what` gives.
std::span<const ComputedQuantity> computed_by(Computes what) noexcept;

// The elements that "content.Cr+Al+Ti" sums up; empty for a name of another form.
std::vector<std::string> elements_of(std::string_view quantity);

bool reads(const Method& method, std::string_view quantity) noexcept;

// In which dimension the quantity is told; nothing where no method reads or computes it, a sum names an element that
// there is not, or a fibre share no concept. Plain `content` and `fibre-share` are quantities too: those of the element
// or fibre that a claim names.
std::optional<measure::Dimension> dimension_of(std::string_view quantity, const EvidenceData& data,
                                               const vocabulary::ConceptTree& concepts);

// All names that methods read or compute, for suggestions; views into `data` and constants.
std::vector<std::string_view> quantity_names(const EvidenceData& data);

}  // namespace grainside::evidence

#endif  // GRAINSIDE_EVIDENCE_QUANTITY_NAMES_H
