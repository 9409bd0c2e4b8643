// design.md 10: which kind a statement is of; 4.4: of which part.
#include "claim_rows.h"

namespace grainside::claims {
namespace {

constexpr Row kRows[] = {
    // tanning
    {"vegetable_tanned", "Vegetable tanned leather bag.",
     "tanning vegetable-tanned body 'Vegetable tanned'\nmaterial leather body 'leather'"},
    {"three_claims", "Vegetable tanned full grain calf leather.",
     "tanning vegetable-tanned body 'Vegetable tanned'\ngrain full-grain-leather body 'full grain'\n"
     "species calf-leather body 'calf leather'"},
    {"chrome_free", "Chrome-free leather.", "tanning chrome-free body 'Chrome-free'\nmaterial leather body 'leather'"},
    // plating and finish
    {"gold_plated", "Gold-plated buckle.", "plating gold-plated hardware 'Gold-plated'"},
    {"plated_brass", "Palladium-plated brass clasp.",
     "plating palladium-plated hardware 'Palladium-plated'\nmaterial brass hardware 'brass'"},
    {"gold_tone", "Gold-tone hardware.", "finish gold-tone hardware 'Gold-tone'"},
    {"pvd", "PVD-coated steel buckle.", "plating pvd-coated hardware 'PVD-coated'\nmaterial steel hardware 'steel'"},
    // performance
    {"waterproof", "Waterproof bag.", "performance waterproof whole 'Waterproof'"},
    {"water_resistant", "Water-resistant tote.", "performance water-resistant whole 'Water-resistant'"},
    {"of_a_part", "Waterproof lining.", "performance waterproof lining 'Waterproof'"},
    {"scratch_proof", "It is scratchproof.", "performance scratch-proof whole 'scratchproof'"},
    {"r_colour_that_resists", "The colour is fade-resistant.", "performance fade-resistant whole 'fade-resistant'"},
    {"durable", "A durable bag.", "performance durable whole 'durable'"},
    {"hypoallergenic", "Hypoallergenic clasp.", "performance hypoallergenic hardware 'Hypoallergenic'"},
    {"rfid", "RFID blocking wallet.", "performance rfid-blocking whole 'RFID blocking'"},
    // composition
    {"nickel_free", "Nickel-free buckle.", "composition nickel-free hardware 'Nickel-free'"},
    // environmental
    {"eco_friendly", "Eco-friendly tote.", "environmental eco-friendly whole 'Eco-friendly'"},
    {"vegan", "A vegan bag.", "environmental vegan whole 'vegan'"},
    {"recycled_material", "Recycled polyester lining.",
     "environmental recycled lining 'Recycled'\nmaterial polyester lining 'polyester'"},
    {"biodegradable", "Biodegradable.", "environmental biodegradable whole 'Biodegradable'"},
    // origin
    {"made_in", "Made in Italy.", "origin made-in whole place=italy 'Made in Italy'"},
    {"made_in_behind_a_material", "Leather tote made in Portugal.",
     "material leather body 'Leather'\norigin made-in whole place=portugal 'made in Portugal'"},
    {"italian_leather", "Italian leather bag.",
     "origin national-material body place=italy 'Italian leather'\nmaterial leather body 'leather'"},
    {"label_of_the_leather", "Leather origin: Italy", "origin sourced-from body place=italy 'Italy'"},
    {"label_of_the_leather_the_other_way", "Origin of leather: Italy. Country of origin: China.",
     "origin sourced-from body place=italy 'Italy'\norigin made-in whole place=china 'China'"},
    {"where_we_get_it", "It is latigo leather that I get from Mexico.",
     "material latigo-leather body 'latigo leather'\norigin sourced-from whole place=mexico 'I get from Mexico'"},
    {"attribute_of_the_hides", "Hide origin | France", "origin sourced-from body place=france 'France'"},
    {"origin_in_a_title_of_keywords", "name | Leather Wallet Style Six Cards Made in USA Stitched Laces",
     "material leather body 'Leather'\norigin made-in whole place=united-states 'Made in USA'"},
    {"country_label", "Country of origin: China", "origin made-in whole place=china 'China'"},
    {"attribute_of_what_was_done", "Cut and sewn in | Wales", "origin sewn-in whole place=united-kingdom 'Wales'"},
    {"label_of_what_was_done", "Leather tanned in: Spain.", "origin tanned-in whole place=spain 'Spain'"},
    {"attribute_of_handwork", "Handmade in | Italy", "origin made-in whole place=italy 'Italy'"},
    {"attribute_of_what_was_done_without_a_place", "Tanned in | our own drums", ""},
    {"country_attribute", "Country of origin | China", "origin made-in whole place=china 'China'"},
    {"designed_in", "Designed in France.", "origin designed-in whole place=france 'Designed in France'"},
    {"handmade_in", "Handmade in Spain.", "origin made-in whole place=spain 'Handmade in Spain'"},
    // who makes it, and praise of them, stand before the place
    {"made_by_artisans_in", "Made by skilled artisans in Italy.",
     "origin made-in whole place=italy 'Made by skilled artisans in Italy'"},
    {"made_by_makers_in_their_workshop", "Made by master craftsmen in our own workshop in Florence, Italy.",
     "origin made-in whole place=italy 'Made by master craftsmen in our own workshop in Florence, Italy'"},
    {"sewn_by", "Sewn by our family near Porto.",
     "origin sewn-in whole place=portugal 'Sewn by our family near Porto'"},
    {"sewn_by_names_the_thread", "Sewn by a previous owner in polyester.", "material polyester thread 'polyester'"},
    {"made_by_artisans_of_something", "Made by skilled artisans in leather.", "material leather body 'leather'"},
    {"bag_made_in_of_leather", "name | Hobo Bag Made in Italy Soft Leather Taupe",
     "origin made-in whole place=italy 'Made in Italy'\nmaterial leather body 'Leather'"},
    {"title_of_leather_made_in", "name | Mens Belt Solid Leather Made in Italy Jeans",
     "material leather strap 'Solid Leather'\norigin made-in whole place=italy 'Made in Italy'"},
    {"necklace", "Necklace with a 925 sterling silver pendant.",
     "material sterling-silver hardware '925 sterling silver'"},
    {"leather_of_a_country", "The leather is Italian: top grain cow.",
     "origin national-material body place=italy 'Italian'\ngrain top-grain-leather body 'top grain'\n"
     "species bovine-leather body 'cow'"},
    {"asked_where", "Q: Where are they made?\nA: In Hungary, all of it.",
     "origin made-in whole place=hungary 'Hungary'"},
    {"asked_where_and_told_twice", "Q: Where are they made?\nA: Made in Portugal, in Porto.",
     "origin made-in whole place=portugal 'Made in Portugal'"},
    {"sewn_where", "We cut and sew these in Texas.",
     "origin sewn-in whole place=united-states 'cut and sew these in Texas'"},
    {"not_made_in", "Not made in China.", "origin made-in whole denied place=china 'made in China'"},
    {"made_in_leather_is_no_origin", "Made in leather.", "material leather body 'leather'"},
    {"dyed", "Aniline leather.", "finish aniline body 'Aniline'\nmaterial leather body 'leather'"},
    {"two_origins", "Designed in France, made in India.",
     "origin designed-in whole place=france 'Designed in France'\norigin made-in whole place=india 'made in India'"},
    {"animal_free", "Animal-free.", "environmental animal-free whole 'Animal-free'"},
    {"plastic_free", "Plastic-free.", "environmental plastic-free whole 'Plastic-free'"},
    {"tarnish_resistant_hardware", "Tarnish-resistant hardware.",
     "performance tarnish-resistant hardware 'Tarnish-resistant'"},
    {"pfas_free", "PFAS-free coat.", "composition pfas-free whole 'PFAS-free'"},
    {"imported_from_a_place", "Imported from India.", "origin imported whole place=india 'Imported from India'"},
    {"tannage_attribute", "Tannage | chrome", "tanning chrome-tanned body 'chrome'"},
    {"tannage_label", "Tanning: vegetable.", "tanning vegetable-tanned body 'vegetable'"},
    {"chrome_elsewhere", "Chrome zip, vegetable dyes.", ""},
    {"attribute_answered_with_yes", "Waterproof | yes", "performance waterproof whole 'yes'"},
    {"attribute_answered_with_no", "Vegan | no", "environmental vegan whole denied 'no'"},
    {"french_made", "French made tote.", "origin made-in whole place=france 'French made'"},
    {"tannery_of_a_country", "From a British tannery.",
     "origin tanned-in whole place=united-kingdom 'British tannery'"},
    {"town_and_country", "Origin | Guangdong, China", "origin made-in whole place=china 'Guangdong, China'"},
    {"certificate_no_and_number", "Nickel-free, certificate no. 8812.",
     "composition nickel-free hardware 'Nickel-free'"},
    {"yes_to_a_material", "Is it real leather? Yes!", "material leather body 'Yes'"},
    {"yes_to_a_part", "Q: Is the strap leather?\nA: Yes.", "material leather strap 'Yes'"},
    {"yes_that_says_it_again", "Is it leather? Yes, it is leather.", "material leather body 'leather'"},
    {"no_to_a_material", "Is it leather? No.", ""},
    {"own_seal", "Our own green seal on it.", "certification self-made-seal whole 'green seal'"},
    {"own_before_a_comma", "Our own, green seal on it.", "certification general-seal whole 'green seal'"},
    {"origin_of_the_leather_is_none_of_the_product", "Origin: Italian leather",
     "origin national-material body place=italy 'Italian leather'\nmaterial leather body 'leather'"},
    {"origin_without_a_noun", "Origin: Italian", ""},
};

}  // namespace

std::span<const Row> statement_rows() {
    return kRows;
}

}  // namespace grainside::claims
