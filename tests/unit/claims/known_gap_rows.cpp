#include "claim_rows.h"

namespace grainside::claims {
namespace {

constexpr Row kRows[] = {
    {"colour_after_or", "Bag in black or bronze.", ""},
    {"inside_names_the_lining", "Outside leather, inside cotton.",
     "material leather body 'leather'\nmaterial cotton lining 'cotton'"},
    {"smell_is_no_material", "It has a leather smell.", ""},
    {"smells_of_oak", "Leather smells of oak.", "material leather body 'Leather'"},
    {"never_denies", "Never made of plastic.", "material plastic body denied 'plastic'"},
    {"not_just_denies_nothing", "Not just leather: full grain leather.",
     "material leather body 'leather'\ngrain full-grain-leather body 'full grain leather'"},
    {"label_answered_with_no", "Waterproof: no", "performance waterproof whole denied 'Waterproof'"},
    {"range_of_percent", "30-40% cotton.", "composition cotton body quantity=30..40 percent '30-40% cotton'"},
    {"percent_as_a_word", "100 percent leather.",
     "composition leather body quantity=100 percent '100 percent leather'"},
    {"imported_from_a_place", "Imported from India.", "origin imported whole place=india 'Imported from India'"},
    {"cuir_de_vachette", "Sac en cuir de vachette.", "species cowhide body 'cuir de vachette'"},
};

}  // namespace

std::span<const Row> known_gap_rows() {
    return kRows;
}

}  // namespace grainside::claims
