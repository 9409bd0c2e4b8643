// design.md 4.3: the head says what a phrase is; 4.6: imitation, coated leather.
#include "claim_rows.h"

namespace grainside::claims {
namespace {

constexpr Row kRows[] = {
    {"thick_leather", "Bag of thick leather.", "material leather body 'leather'"},
    {"corrected_full_grain", "Belt in corrected full grain leather.",
     "grain corrected-grain-leather strap 'corrected'\ngrain full-grain-leather strap 'full grain leather'"},
    {"look_before_another_material", "Tote in linen-look canvas.",
     "material canvas body called=linen 'linen-look canvas'"},
    {"like_before_another_material", "Leather like polyurethane bag.",
     "material polyurethane body 'Leather like polyurethane'"},
    // heads and modifiers
    {"cuir_de_vachette", "Sac en cuir de vachette.", "species cowhide body 'cuir de vachette'"},
    {"bare", "A leather tote.", "material leather body 'leather'"},
    {"grain", "A full grain tote.", "grain full-grain-leather body 'full grain'"},
    {"grain_takes_the_noun", "Full grain leather tote.", "grain full-grain-leather body 'Full grain leather'"},
    {"hyphenated", "Full-grain leather tote.", "grain full-grain-leather body 'Full-grain leather'"},
    {"joined", "Fullgrain leather tote.", "grain full-grain-leather body 'Fullgrain leather'"},
    {"top_grain", "Wallet in top grain leather.", "grain top-grain-leather body 'top grain leather'"},
    {"species", "Tote in calfskin.", "species calf-leather body 'calfskin'"},
    {"species_takes_the_noun", "Cow leather wallet.", "species bovine-leather body 'Cow leather'"},
    {"nappa", "Nappa clutch.", "material nappa body 'Nappa'"},
    {"suede", "Suede hobo bag.", "material suede body 'Suede'"},
    {"grain_and_species", "Full grain calf leather bag.",
     "grain full-grain-leather body 'Full grain'\nspecies calf-leather body 'calf leather'"},
    {"genuine_belongs_to_the_words", "Genuine leather belt.", "material leather strap 'Genuine leather'"},
    {"quality_word_belongs_to_the_words", "Bag in premium leather.", "material leather body 'premium leather'"},
    {"split", "Split leather belt.", "grain split-leather strap 'Split leather'"},
    {"bonded", "Bonded leather journal.", "material bonded-leather body 'Bonded leather'"},
    {"patent", "Patent leather pumps.", "finish patent-leather upper 'Patent leather'"},
    {"fibre_with_a_weave", "Cotton canvas tote.", "material cotton body 'Cotton canvas'"},
    {"canvas", "Canvas tote.", "material canvas body 'Canvas'"},
    // the modifier says otherwise
    {"textile_leather", "Textile leather chair.", "material coated-fabric body called=leather 'Textile leather'"},
    {"pu_leather", "PU leather tote.", "material polyurethane body called=leather 'PU leather'"},
    {"genuine_pu_leather", "Genuine PU leather tote.",
     "material polyurethane body called=leather 'Genuine PU leather'"},
    {"pvc_leather", "PVC leather pouch.", "material polyvinyl-chloride body called=leather 'PVC leather'"},
    {"cork_leather", "Cork leather card holder.", "material cork-sheet body called=leather 'Cork leather'"},
    {"apple_leather", "Apple leather wallet.", "material apple-sheet body called=leather 'Apple leather'"},
    {"vegan_leather", "Vegan leather backpack.", "material vegan-leather body called=leather 'Vegan leather'"},
    {"microfibre_leather", "Microfibre leather sofa.",
     "material microfibre-synthetic body called=leather 'Microfibre leather'"},
    // imitation and look
    {"faux", "Faux leather tote.", "material imitation-leather body called=leather 'Faux leather'"},
    {"imitation", "Imitation leather tote.", "material imitation-leather body called=leather 'Imitation leather'"},
    {"man_made", "Man-made leather tote.", "material imitation-leather body called=leather 'Man-made leather'"},
    {"faux_suede", "Faux suede pouch.", "material imitation-suede body called=suede 'Faux suede'"},
    {"look_before_the_head", "Leather-look polyurethane satchel.",
     "material polyurethane body 'Leather-look polyurethane'"},
    {"effect_before_the_head", "Leather-effect PU satchel.", "material polyurethane body 'Leather-effect PU'"},
    {"look_alone", "A leather-look tote.", "material leather-look-material body called=leather 'leather-look'"},
    {"embossed_plastic", "Croc-embossed PU clutch.",
     "finish crocodile-embossed body 'Croc-embossed'\nmaterial polyurethane body 'PU'"},
    {"calf_embossed_plastic", "Calf-embossed PU clutch.",
     "finish calf-embossed body 'Calf-embossed'\nmaterial polyurethane body 'PU'"},
    {"print_behind_a_skin_and_leather", "Handbag in ostrich leather print.",
     "finish ostrich-embossed body 'ostrich leather print'"},
    {"plating_told_with_its_gold", "Brass buckle, gold-plated in 18k gold.",
     "material brass hardware 'Brass'\nplating karat-gold-plated hardware 'gold-plated in 18k gold'"},
    {"embossed_leather", "Crocodile-embossed calfskin clutch.",
     "finish crocodile-embossed body 'Crocodile-embossed'\nspecies calf-leather body 'calfskin'"},
    // coating and lamination
    {"coated_split", "PU-coated split belt.", "finish pu-split strap 'PU-coated split'"},
    {"coated_leather", "Coated leather bag.", "finish coated-leather body 'Coated leather'"},
    {"plastic_coated_cotton", "PVC-coated cotton tote.", "material pvc-coated-fabric body 'PVC-coated cotton'"},
    {"coated_canvas", "Coated canvas tote.", "material coated-canvas body 'Coated canvas'"},
    {"bicast", "Bicast leather sofa.", "finish bicast-leather body 'Bicast leather'"},
    // lists
    {"and", "Canvas and leather tote.", "material canvas body 'Canvas'\nmaterial leather body 'leather'"},
    {"slash", "Leather/PU bag.", "material leather body 'Leather'\nmaterial polyurethane body 'PU'"},
    {"comma", "Made of leather, canvas and brass.",
     "material leather body 'leather'\nmaterial canvas body 'canvas'\nmaterial brass hardware 'brass'"},
    {"repeats_count_each_time", "Leather bag. Leather inside and out.",
     "material leather body 'Leather'\nmaterial leather body 'Leather'"},
    // spelling (design.md 4.2)
    {"one_slip_in_a_long_word", "Polyurethan bag.", "material polyurethane body 'Polyurethan'"},
    {"swapped_letters", "Genuine laether bag.", "material leather body 'Genuine laether'"},
    {"american_fibre", "Microfiber pouch.", "material microfibre body 'Microfiber'"},
    // several languages of the trade (design.md 4.8)
    {"kunstleder", "Tasche aus Kunstleder.", "material leatherette body 'Kunstleder'"},
    {"ecopelle", "Borsa in ecopelle.", "material eco-leather body 'ecopelle'"},
    {"vera_pelle", "Vera pelle.", "material leather body 'Vera pelle'"},
    {"accents", "Cuir v\u00E9ritable.", "material leather body 'Cuir v\u00E9ritable'"},
    {"solid_brass", "Solid brass buckle.", "material brass hardware 'Solid brass'"},
    {"pure_silk", "Lined in pure silk.", "material silk lining 'pure silk'"},
    {"recycled_leather", "Recycled leather notebook cover.", "material recycled-leather body 'Recycled leather'"},
    {"suede_finish_plastic", "Suede-effect polyester pouch.", "material polyester body 'Suede-effect polyester'"},
    {"laminated", "Canvas laminated with PVC.",
     "material canvas body 'Canvas'\nmaterial polyvinyl-chloride body 'PVC'"},
    {"backed", "Leather backed with vinyl.", "material leather body 'Leather'\nmaterial vinyl body 'vinyl'"},
    {"plus_sign", "Leather + canvas tote.", "material leather body 'Leather'\nmaterial canvas body 'canvas'"},
    {"html_emphasis", "<b>Full grain</b> leather tote.", "grain full-grain-leather body 'Full grain</b> leather'"},
    {"coined_prefix", "Tote in leathertex.", "material coined-leather-name body 'leathertex'"},
    {"coined_suffix", "Texleather tote.", "material coined-leather-name body 'Texleather'"},
    {"everyday_word_with_leather", "Tote from our leatherworks.", ""},
    {"throughout", "Genuine cowhide throughout.", "species cowhide body 'Genuine cowhide'"},
    {"bare_coat", "Split leather, PU coated.",
     "grain split-leather body 'Split leather'\nfinish coated-leather body 'PU coated'"},
    {"by_the_metre", "PU leather fabric.", "material polyurethane body called=leather 'PU leather fabric'"},
    {"coat_on_a_split", "PU-faced split leather bag.", "finish coated-split-leather body 'PU-faced split leather'"},
    {"coat_on_a_suede_split", "PU covered suede split.", "finish coated-split-leather body 'PU covered suede split'"},
};

}  // namespace

std::span<const Row> identity_rows() {
    return kRows;
}

}  // namespace grainside::claims
