// design.md 4.7: percentages and their sum, thickness, plating, karat, denier, gsm, grades, ranges and units.
#include "claim_rows.h"

namespace grainside::claims {
namespace {

constexpr Row kRows[] = {
    // 16 CFR 303.23: the main fibres, then the exception with its percentage and place
    {"share_behind_except", "60% cotton, 40% rayon, except 4% nylon added to toe and heel",
     "composition cotton body quantity=60 percent '60% cotton'\n"
     "composition viscose body quantity=40 percent '40% rayon'\n"
     "composition nylon body quantity=4 percent '4% nylon'"},
    // percentages
    {"share", "60% polyurethane.", "composition polyurethane body quantity=60 percent '60% polyurethane'"},
    {"share_with_a_space", "60 % polyurethane.",
     "composition polyurethane body quantity=60 percent '60 % polyurethane'"},
    {"two_shares", "Lining: 60% cotton, 40% linen.",
     "composition cotton lining quantity=60 percent '60% cotton'\n"
     "composition linen lining quantity=40 percent '40% linen'"},
    {"shares_with_slash", "Lining: 60% cotton/40% linen",
     "composition cotton lining quantity=60 percent '60% cotton'\n"
     "composition linen lining quantity=40 percent '40% linen'"},
    {"number_behind", "Lining: cotton 60%, linen 40%.",
     "composition cotton lining quantity=60 percent 'cotton 60%'\n"
     "composition linen lining quantity=40 percent 'linen 40%'"},
    {"hundred", "100% cotton lining.", "composition cotton lining quantity=100 percent '100% cotton'"},
    {"hundred_genuine", "100% genuine leather.",
     "composition leather body quantity=100 percent '100% genuine leather'"},
    {"decimal_point", "2.5% elastane.", "composition elastane body quantity=2.5 percent '2.5% elastane'"},
    {"decimal_comma", "2,5% elastane.", "composition elastane body quantity=2.5 percent '2,5% elastane'"},
    {"shares_of_two_parts", "Outer: 100% leather. Lining: 100% cotton.",
     "composition leather body quantity=100 percent '100% leather'\n"
     "composition cotton lining quantity=100 percent '100% cotton'"},
    {"discount_is_no_share", "Leather bag, 20% off.", "material leather body 'Leather'"},
    // thickness
    {"millimetres", "Leather 1.4 mm thick.",
     "material leather body 'Leather'\nmeasure thickness body quantity=1.4 millimetre '1.4 mm thick'"},
    {"millimetres_joined", "1.4mm leather.",
     "measure thickness body quantity=1.4 millimetre '1.4mm'\nmaterial leather body 'leather'"},
    {"range", "1.2-1.4 mm leather.",
     "measure thickness body quantity=1.2..1.4 millimetre '1.2-1.4 mm'\nmaterial leather body 'leather'"},
    {"range_with_en_dash",
     "1.2\xE2\x80\x93"
     "1.4 mm leather.",
     "measure thickness body quantity=1.2..1.4 millimetre '1.2\xE2\x80\x93"
     "1.4 mm'\nmaterial leather body 'leather'"},
    {"ounces", "8 oz leather.",
     "measure thickness body quantity=8 ounce-leather '8 oz'\nmaterial leather body 'leather'"},
    {"ounces_range", "8-9 oz leather.",
     "measure thickness body quantity=8..9 ounce-leather '8-9 oz'\nmaterial leather body 'leather'"},
    {"thickness_label", "Thickness: 1.8 mm", "measure thickness body quantity=1.8 millimetre '1.8 mm'"},
    {"width_is_a_size", "Leather belt, 35 mm wide.", "material leather strap 'Leather'"},
    // cloth
    {"gsm", "Canvas of 400 gsm.",
     "material canvas body 'Canvas'\nmeasure cloth-weight body quantity=400 gram-per-square-metre '400 gsm'"},
    {"grams_per_square_metre", "400 g/m\xC2\xB2 canvas.",
     "measure cloth-weight body quantity=400 gram-per-square-metre '400 g/m\xC2\xB2'\nmaterial canvas body 'canvas'"},
    {"denier", "600 denier polyester lining.",
     "measure yarn-size lining quantity=600 denier '600 denier'\nmaterial polyester lining 'polyester'"},
    {"denier_letter", "600D polyester lining.",
     "measure yarn-size lining quantity=600 denier '600D'\nmaterial polyester lining 'polyester'"},
    {"canvas_ounces", "16 oz canvas.",
     "measure cloth-weight body quantity=16 ounce-leather '16 oz'\nmaterial canvas body 'canvas'"},
    // plating and alloys
    {"plating_microns", "Gold-plated, 3 microns.",
     "plating gold-plated hardware 'Gold-plated'\n"
     "measure plating-thickness hardware quantity=3 micrometre '3 microns'"},
    {"alloy_grade", "316L stainless steel buckle.", "material stainless-steel-316l hardware '316L stainless steel'"},
    {"alloy_grade_304", "Stainless steel 304 buckle.", "material stainless-steel-304 hardware 'Stainless steel 304'"},
    {"karat", "18k gold clasp.", "material gold-18k hardware '18k gold'"},
    {"fineness", "925 silver buckle.", "material sterling-silver hardware '925 silver'"},
    {"iron", "Sole of 9 irons.", "measure thickness sole quantity=9 iron '9 irons'"},
    {"thickness_label_with_leather", "Leather thickness: 1.2-1.4 mm",
     "material leather body 'Leather'\nmeasure thickness body quantity=1.2..1.4 millimetre '1.2-1.4 mm'"},
    {"foam_density", "Foam of 35 kg/m3.",
     "material foam filling 'Foam'\nmeasure foam-density filling quantity=35 kilogram-per-cubic-metre '35 kg/m3'"},
    {"thousands", "1,000 denier nylon.",
     "measure yarn-size body quantity=1000 denier '1,000 denier'\nmaterial nylon body 'nylon'"},
    {"price_is_no_measure", "Leather for 400.", "material leather body 'Leather'"},
    {"mil", "Gold-plated 20 micron.",
     "plating gold-plated hardware 'Gold-plated'\nmeasure plating-thickness hardware quantity=20 micrometre '20 "
     "micron'"},
    {"microns_by_sign", "Gold-plated, 3 \u00B5m.",
     "plating gold-plated hardware 'Gold-plated'\nmeasure plating-thickness hardware quantity=3 micrometre '3 "
     "\u00B5m'"},
    {"range_of_percent", "30-40% cotton.", "composition cotton body quantity=30..40 percent '30-40% cotton'"},
    {"percent_as_a_word", "100 percent leather.",
     "composition leather body quantity=100 percent '100 percent leather'"},
    {"coat_of", "Leather with a polyurethane coating of 0.20 mm.",
     "material leather body 'Leather'\nfinish polyurethane-finish body 'polyurethane coating'\n"
     "measure coating-thickness body quantity=0.2 millimetre '0.20 mm'"},
    {"ounces_in_brackets", "Leather, 2.0-2.4 mm (5-6 oz).",
     "material leather body 'Leather'\nmeasure thickness body quantity=2..2.4 millimetre '2.0-2.4 mm'\n"
     "measure thickness body quantity=5..6 ounce-leather '5-6 oz'"},
    {"share_of_an_unknown_material", "65% polyurethane, 20% cactus powder, 15% cotton.",
     "composition polyurethane body quantity=65 percent '65% polyurethane'\n"
     "composition other-fibres body quantity=20 percent '20% cactus powder'\n"
     "composition cotton body quantity=15 percent '15% cotton'"},
    {"share_of_something_else", "60% polyurethane, 40% cotton, 20% off today.",
     "composition polyurethane body quantity=60 percent '60% polyurethane'\n"
     "composition cotton body quantity=40 percent '40% cotton'"},
    {"unknown_material_in_the_middle", "Roomy soft pretty tote, 60% cotton, 40% cactus powder.",
     "composition cotton body quantity=60 percent '60% cotton'\n"
     "composition other-fibres body quantity=40 percent '40% cactus powder'"},
};

}  // namespace

std::span<const Row> number_rows() {
    return kRows;
}

}  // namespace grainside::claims
