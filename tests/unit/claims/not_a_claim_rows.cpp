// design.md 4.5 and 10: what is not a claim never yields one.
#include "claim_rows.h"

namespace grainside::claims {
namespace {

constexpr Row kRows[] = {
    {"like_of_the_same_kind", "Ring in gold like 18k gold.", ""},
    {"the_trade_in_general", "Conventional leather is chrome tanned; ours is vegetable tanned.",
     "tanning vegetable-tanned body 'vegetable tanned'"},
    {"other_goods_to_look_at", "Leather gloves. For wood look at our gloves in suede.",
     "material leather body 'Leather'"},
    {"worn_with_it", "Leather bag. Wear her with silk.", "material leather body 'Leather'"},
    {"where_it_stands", "Tray with rubber feet that keep it in place on oak.", "material rubber hardware 'rubber'"},
    {"keys_that_come_with_it", "The lock opens with two steel keys.", ""},
    // colours
    {"colour_leather_brown", "Leather brown lining of cotton.", "material cotton lining 'cotton'"},
    {"colour_gold", "Available in gold.", ""},
    {"colour_label", "Colour: rose gold", ""},
    {"colour_attribute", "Colour | leather brown", ""},
    {"colour_of_hardware", "Gold hardware.", ""},  // design.md 10 (4)
    {"walnut_leather", "Walnut leather bag.", "material leather body 'leather'"},
    {"silver_bag", "Silver clutch.", ""},
    // care
    {"care_wipe", "Wipe with a leather cloth.", ""},
    {"care_do_not", "Do not use suede spray.", ""},
    {"care_label", "Care: clean with leather soap", ""},
    {"care_label_attribute", "Care | leather balm", ""},
    {"care_after_a_claim", "Leather bag; clean with a cotton cloth.", "material leather body 'Leather'"},
    // accessories and packaging
    {"care_kit", "Comes with a leather care kit.", ""},
    {"suede_brush", "A suede brush is included.", ""},
    {"dust_bag_of_cotton", "Dust bag in cotton.", ""},
    {"cotton_dust_bag", "Leather bag with a cotton dust bag.", "material leather body 'Leather'"},
    {"delivered_in", "Delivered in a cotton pouch.", ""},
    {"goods_that_come_along", "Canvas clutch. Comes with a full-grain key fob.", "material canvas body 'Canvas'"},
    {"goods_that_come_along_in_a_list",
     "Canvas clutch. Complete with a leather strap, a suede wallet and a key fob in horn.",
     "material canvas body 'Canvas'\nmaterial leather strap 'leather'"},
    {"goods_of_the_set_that_come_along", "name | Canvas clutch and wallet\nComes with a suede wallet.",
     "material canvas body 'Canvas'\nmaterial suede body 'suede'"},
    {"goods_named_before_what_comes_along", "Canvas clutch or wallet. Comes with a suede wallet.",
     "material canvas body 'Canvas'\nmaterial suede body 'suede'"},
    {"list_of_what_comes_along_ends", "Canvas clutch. Comes with a key fob; the wallet pocket is suede.",
     "material canvas body 'Canvas'\nmaterial suede lining 'suede'"},
    {"in_the_box", "Packaging: recycled cardboard", ""},
    // comparisons
    {"softer_than", "Softer than leather.", ""},
    {"unlike", "Unlike PU, it lasts.", ""},
    {"instead_of", "Cotton instead of leather.", "material cotton body 'Cotton'"},
    {"feels_like", "Polyurethane that feels like suede.", "material polyurethane body 'Polyurethane'"},
    {"smooth_as", "As soft as silk.", ""},
    {"comparison_of_two", "Better than leather or suede.", ""},
    {"drape", "The drape of silk.", ""},
    // other products
    {"pairs_with", "Pairs with our leather belt.", ""},
    {"pairs_with_after_a_claim", "Canvas tote. Pairs well with our suede loafers.", "material canvas body 'Canvas'"},
    {"sold_separately", "Leather strap sold separately.", ""},
    {"also_available", "Also available in suede.", ""},
    {"wear_with", "Wear with a silk scarf.", ""},
    // general teaching
    {"teaching_made_from", "Bonded leather is made from shredded hide.", ""},
    {"teaching_means", "Full grain means the grain is intact.", ""},
    {"teaching_often", "Genuine leather is often split leather.", ""},
    {"crowd", "Many brands use PU leather.", ""},
    {"not_teaching_our", "Our leather is made from cowhide.",
     "material leather body 'leather'\nspecies cowhide body 'cowhide'"},
    {"not_teaching_a_part", "The lining is made of cotton.", "material cotton lining 'cotton'"},
    // questions
    {"question", "Is it real leather?", ""},
    {"question_answered", "Is it leather? It is polyurethane.", "material polyurethane body 'polyurethane'"},
    // what customers are quoted with
    {"review", "\"I thought it was real lamb!\" wrote Petra.", ""},
    {"review_of_two_sentences", "\"Everyone thinks it's leather. I tell them it isn't.\" Pia, verified buyer", ""},
    {"review_with_a_name_below", "\"Solid as leather, even with my two dogs.\"\nMarit, Bergen\nMade of canvas.",
     "material canvas body 'canvas'"},
    {"review_introduced", "One customer told us: \"my old leather soles were never this soft.\"", ""},
    {"the_makers_own_words", "\"We only use full grain leather,\" says our founder.",
     "grain full-grain-leather body 'full grain leather'"},
    {"inches_are_no_quotes", "Belt 28\" to 44\" long, full grain leather, 2\" wide, says a customer.",
     "grain full-grain-leather strap 'full grain leather'"},
    // what is paid for apart, or left out
    {"surcharge", "Top layer cowhide +0.80 USD. Gift box with wooden lid +3.", ""},
    {"plus_that_asks_no_money", "Bag with 8 pockets +2 leather straps.", "material leather strap 'leather'"},
    {"plus_and_a_share", "30% cotton +70% polyester.",
     "composition cotton body quantity=30 percent '30% cotton'\n"
     "composition polyester body quantity=70 percent '70% polyester'"},
    {"material_not_included", "Leather not included.", ""},
    {"boxed_with_a_ribbon", "Gift box with satin ribbon.", ""},
    // taken up, and the conditional
    {"what_the_leather_does", "The leather darkens with your hands.", ""},
    {"what_a_named_thing_is_of", "The sterling silver concho catches the light.",
     "material sterling-silver hardware 'sterling silver'"},
    {"a_class_taken_up", "The full grain leather is sanded. The cowhide is thick.",
     "grain full-grain-leather body 'full grain leather'\ngrain sanded-grain-leather body 'sanded'\n"
     "species cowhide body 'cowhide'"},
    {"general_remarks", "Steel rusts in damp leather. Suede spots in rain. Leather soaks up water.", ""},
    {"condition_behind_a_comma", "Brown leather, free if you carry it.", "material leather body 'leather'"},
    {"condition", "If you like suede, ask us.", ""},
    {"pets_are_no_plastic", "Smoke free home, no pets. Safe for child and pet.", ""},
    {"blanket_that_hides", "The wool blanket hides it well.", ""},
    // idioms and names
    {"idiom_silver_lining", "Every cloud has a silver lining.", ""},
    {"idiom_gold_standard", "The gold standard of totes.", ""},
    {"idiom_silk_screen", "Silk-screen print.", ""},
    {"idiom_mid_calf", "Mid-calf boots.", ""},
    {"idiom_leather_workers", "Made by leather workers.", ""},
    {"name_in_single_quotes", "The 'Suede Road' tote in canvas.", "material canvas body 'canvas'"},
    {"name_in_single_quotes_at_the_end", "A canvas tote, 'Velvet Thunder'", "material canvas body 'canvas'"},
    {"foot_marks_are_no_quotes", "6' silk scarf, 5' wide.", "material silk body 'silk'"},
    {"quoted_name", "name | The \"Silk Road\" canvas tote", "material canvas body 'canvas'"},
    // construction, sizes, senses
    {"construction", "Split hem, bonded thread.", ""},
    {"sensory", "Soft, buttery and supple.", ""},
    {"size", "30 x 20 x 10 cm.", ""},
    {"size_label", "Dimensions: 300 mm x 12 mm", ""},
    {"weight", "Weighs 900 g.", ""},
    {"praise_alone", "Premium quality.", ""},
    {"craft_alone", "Handmade with care.", ""},
    {"accessory_in_a_list", "Includes a leather cleaner and cloth.", ""},
    {"hyphen_colour", "A leather-brown cotton tote.", "material cotton body 'cotton'"},
    {"tone", "A cognac tone.", ""},
    {"looks_like", "It looks like suede.", ""},
    {"other_brands_bags", "Cheaper bags use split leather.", ""},
    {"match_with", "Matches our suede belt.", ""},
    {"category_is_no_statement", "Style | leather", ""},
    {"leather_anniversary", "A gift for the leather anniversary.", ""},
    {"colour_after_or", "Bag in black or bronze.", ""},
    {"smell_is_no_material", "It has a leather smell.", ""},
    {"smells_of_oak", "Leather smells of oak.", "material leather body 'Leather'"},
    // other goods
    {"another_category", "Leather tote. Dye may rub off on your wool trousers.", "material leather body 'Leather'"},
    {"another_category_of_stuff", "Canvas backpack. Pack your boots in suede.", "material canvas body 'Canvas'"},
    {"everyday_thing", "Leather strap for a watch. The aluminium camera is heavy.", "material leather strap 'Leather'"},
    {"thing_as_a_modifier", "Bag with a nylon camera compartment.", "material nylon body 'nylon'"},
    {"homonym_is_no_other_product", "Leather bag under a wax coat.", "material leather body 'Leather'"},
    {"plural_cue", "A goatskin belt and a suede pouch are shown below.", ""},
    {"bracket_before_a_cue", "A name plate (solid brass, engraved) can be added.", ""},
    {"answer_on_other_goods", "Do you sell belts? A: Leather ones, yes.", ""},
    // colours by name
    {"shade_called", "In a shade that we call wet suede.", ""},
    {"colour_is", "The colour is raw silk, the lining is cotton.", "material cotton lining 'cotton'"},
    {"r_colour_is_a_material_word", "The colour is raw silk.", ""},
    {"metal_and_colour", "Shown here in brass yellow.", ""},
    {"leather_colour", "The brown leather colour may differ.", ""},
    // what a material is
    {"what_is", "What is cordovan? Not a grain leather, but a layer below the grain.", ""},
    {"sensory_feel", "Knob with a soft rubber feel.", ""},
    {"care_with_its_subject", "Leather sofa keep away from sun.", ""},
    {"accessory_behind_keywords", "name | Mens wallet real leather slim bifold card holder cotton gift box",
     "material leather body 'real leather'"},
    {"coin_purse_of_a_machine", "Zero purse.", ""},
    {"everyday_thing_in_the_title", "name | Leather camera", "material leather body 'Leather'"},
    {"wipes_down", "Cotton pouffe, soft, wipes down and folds down.", "material cotton body 'Cotton'"},
    {"house_with_an_ampersand", "A canvas wallet by Quillford & Ash.", "material canvas body 'canvas'"},
    {"of_another_model", "Canvas tote. Python leather print flap on the sister model.",
     "material canvas body 'Canvas'"},
    {"everyday_thing_in_the_text", "Leather camera.", ""},
};

}  // namespace

std::span<const Row> not_a_claim_rows() {
    return kRows;
}

}  // namespace grainside::claims
