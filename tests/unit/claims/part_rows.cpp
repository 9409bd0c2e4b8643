// design.md 4.4: a claim belongs to a part by its phrase, its field, its heading or bullet.
#include "claim_rows.h"

namespace grainside::claims {
namespace {

constexpr Row kRows[] = {
    // by the phrase
    {"material_before_the_part", "Cotton lining.", "material cotton lining 'Cotton'"},
    {"part_of_a_material", "Buckle of brass.", "material brass hardware 'brass'"},
    {"part_is_of", "The lining is cotton.", "material cotton lining 'cotton'"},
    {"alloy_buckle", "Zinc alloy buckle.", "material zinc-alloy hardware 'Zinc alloy'"},
    {"lined_with", "Leather tote lined with cotton.",
     "material leather body 'Leather'\nmaterial cotton lining 'cotton'"},
    {"lined_in", "Leather tote, lined in suede.", "material leather body 'Leather'\nmaterial suede lining 'suede'"},
    {"leather_lined", "Leather-lined canvas tote.", "material leather lining 'Leather'\nmaterial canvas body 'canvas'"},
    {"y_lined_x", "Silk-lined calfskin clutch.", "material silk lining 'Silk'\nspecies calf-leather body 'calfskin'"},
    {"with_trim", "Canvas with leather trim.", "material canvas body 'Canvas'\nmaterial leather trim 'leather'"},
    {"trimmed", "Leather-trimmed canvas bag.", "material leather trim 'Leather'\nmaterial canvas body 'canvas'"},
    {"strap", "Bag with a leather strap.", "material leather strap 'leather'"},
    {"handle", "Canvas tote with leather handles.", "material canvas body 'Canvas'\nmaterial leather handle 'leather'"},
    {"sole", "Boots with a rubber sole.", "material rubber sole 'rubber'"},
    {"upper", "Suede upper, leather lining, rubber outsole.",
     "material suede upper 'Suede'\nmaterial leather lining 'leather'\nmaterial rubber sole 'rubber'"},
    {"zip", "Brass zip.", "material brass zip 'Brass'"},
    {"thread", "Stitched with linen thread.", "material linen thread 'linen'"},
    {"edge", "Painted edges.", "finish edge-painted edge 'Painted'"},
    {"three_parts_in_a_sentence", "Leather body, cotton lining and brass hardware.",
     "material leather body 'Leather'\nmaterial cotton lining 'cotton'\nmaterial brass hardware 'brass'"},
    {"head_of_the_noun_group", "Leather bag strap.", "material leather strap 'Leather'"},
    // by the category
    {"belt_is_its_strap", "Leather belt.", "material leather strap 'Leather'"},
    {"watch_strap", "Calfskin watch strap.", "species calf-leather strap 'Calfskin'"},
    {"shoe_is_its_upper", "Leather loafers.", "material leather upper 'Leather'"},
    {"sofa_is_its_body", "Leather sofa.", "material leather body 'Leather'"},
    {"metal_without_a_part_is_hardware", "Leather wallet in brass and canvas.",
     "material leather body 'Leather'\nmaterial brass hardware 'brass'\nmaterial canvas body 'canvas'"},
    // by a label in the text
    {"label", "Lining: cotton", "material cotton lining 'cotton'"},
    {"labels_in_a_line", "Outer: leather. Lining: polyester. Hardware: brass.",
     "material leather body 'leather'\nmaterial polyester lining 'polyester'\nmaterial brass hardware 'brass'"},
    {"labels_in_bullets", "- Lining: cotton\n- Buckle: brass\n",
     "material cotton lining 'cotton'\nmaterial brass hardware 'brass'"},
    {"material_label", "Material: leather", "material leather body 'leather'"},
    {"label_with_a_dash", "Lining - cotton", "material cotton lining 'cotton'"},
    {"heading_over_a_bullet", "# Lining\n- cotton twill\n", "material cotton lining 'cotton twill'"},
    {"table_row", "| Lining | cotton |\n| Strap | leather |\n",
     "material cotton lining 'cotton'\nmaterial leather strap 'leather'"},
    // by the field
    {"attribute", "Lining | cotton", "material cotton lining 'cotton'"},
    {"attribute_of_a_strap", "Strap material | full grain leather",
     "grain full-grain-leather strap 'full grain leather'"},
    {"attribute_material", "Material | leather", "material leather body 'leather'"},
    {"material_field", "material | PU leather", "material polyurethane body called=leather 'PU leather'"},
    {"title", "name | Leather tote", "material leather body 'Leather'"},
    {"attribute_that_is_no_part", "Feel | leather", "material leather body 'leather'"},
    {"brackets_explain_the_part", "Lining (100% polyester).",
     "composition polyester lining quantity=100 percent '100% polyester'"},
    {"interior_of", "The interior is of suede.", "material suede lining 'suede'"},
    {"html_list", "<ul><li>Lining: cotton</li><li>Strap: leather</li></ul>",
     "material cotton lining 'cotton'\nmaterial leather strap 'leather'"},
    {"html_table", "<table><tr><th>Lining</th><td>cotton</td></tr></table>", "material cotton lining 'cotton'"},
    {"filling", "Filled with down.", "material down filling 'down'"},
    {"semicolon_cuts", "Lining of cotton; body of leather.",
     "material cotton lining 'cotton'\nmaterial leather body 'leather'"},
    {"label_ends_with_its_line", "Lining: cotton\nLeather tote.",
     "material cotton lining 'cotton'\nmaterial leather body 'Leather'"},
    {"inside_names_the_lining", "Outside leather, inside cotton.",
     "material leather body 'leather'\nmaterial cotton lining 'cotton'"},
    {"on_the_reverse", "Strap in nubuck, with calfskin on the reverse.",
     "material nubuck strap 'nubuck'\nspecies calf-leather lining 'calfskin'"},
    {"back_of_a_strap", "Leather belt. Back: cotton.",
     "material leather strap 'Leather'\nmaterial cotton lining 'cotton'"},
    {"back_of_a_bag", "Leather bag. Back: cotton.", "material leather body 'Leather'\nmaterial cotton body 'cotton'"},
    {"compound_label", "Leather jacket. Body lining: viscose.",
     "material leather body 'Leather'\nmaterial viscose lining 'viscose'"},
    {"answer_to_a_part", "Q: What is the lining?\nA: Viscose.", "material viscose lining 'Viscose'"},
    {"material_and_care_label", "Material & care: canvas.", "material canvas body 'canvas'"},
    {"material_as_a_label", "Webbing: polyester.", "material polyester body 'polyester'"},
    {"keyword_title", "name | Mens Belt Full Grain Leather Automatic Buckle Solid Brass Click Belt Gift",
     "grain full-grain-leather strap 'Full Grain Leather'\nmaterial brass hardware 'Solid Brass'"},
    {"details_are_no_trim", "Details | Full grain calf.",
     "grain full-grain-leather body 'Full grain'\nspecies calf-leather body 'calf'"},
    {"questions_and_answers_heading", "## Q&A\n\nThe body is PU.", "material polyurethane body 'PU'"},
    {"materials_and_care_heading", "## Materials & care\n\nCanvas.", "material canvas body 'Canvas'"},
    {"no_label_at_the_end_of_a_bracket", "(Keeps cards and coins inside) cotton tote.",
     "material cotton body 'cotton'"},
};

}  // namespace

std::span<const Row> part_rows() {
    return kRows;
}

}  // namespace grainside::claims
