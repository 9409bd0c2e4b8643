// Gold content: karat, parts per thousand, and the fine gold that a layer of gold alloy holds.
//
// Two rules for the fine-gold equivalent of a layer are in use and disagree; both are here under their names, and a
// finding has to say which one its limit is stated in. Thicknesses in any one unit, in as out. Pure functions, any
// number of threads; they return nothing for a fineness outside 0 to 1000 (0 to 24 karat), a negative thickness, a
// density that is not positive, and readings that are not usable (usable.h).
#ifndef GRAINSIDE_MEASURE_FINENESS_H
#define GRAINSIDE_MEASURE_FINENESS_H

#include <optional>

#include "measure/measured.h"

namespace grainside::measure {

// g/cm3, as the equivalents of ISO 10713:1992 need it (recomputed from its table; handbooks have 19.32).
inline constexpr double kFineGoldDensity = 19.3;

// A karat is a 24th part by mass: 18 karat is 750 parts per thousand.
std::optional<double> parts_per_thousand_of_karat(double karat);
std::optional<double> karat_of_parts_per_thousand(double parts_per_thousand);

// A layer of gold alloy. Fineness in parts per thousand by mass, density of the alloy in g/cm3.
struct GoldLayer {
    Measured thickness;
    Measured parts_per_thousand;
    Measured alloy_density;
};

// ISO 10713:1992: the fine gold of the same mass on the same area, thickness * fineness * alloy density / 19.3.
std::optional<Measured> fine_gold_iso10713(const GoldLayer& layer);

// The other way about: the alloy thickness that holds `fine_gold` of fine gold by the same rule. Nothing for a fineness
// of 0 as well.
std::optional<double> alloy_thickness_iso10713(double fine_gold, double parts_per_thousand, double alloy_density);

// The US jewellery guides (16 CFR 23.3, footnote to the 1996 text, from memory): thickness * fineness, without density,
// so that 1 micrometre of 12 karat counts as 0.5. It counts more gold than the layer of a lighter alloy holds.
std::optional<Measured> fine_gold_us_guides(const Measured& thickness, const Measured& parts_per_thousand);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_FINENESS_H
