// Where a scope begins and ends: the first and the last word of a text, and pairs of texts on both sides of each bound
// of lib/claims. That there is a bound is design.md 4 (a scope is a phrase, a clause, a label); how many words it takes
// is our own choice, stated beside the constant in the code, without an outside source. A word that means nothing
// ('brabo', 'tindle', 'mosk', 'quorl') stands for any that the book does not know.
#include "claim_rows.h"

namespace grainside::claims {
namespace {

constexpr Row kRows[] = {
    // colours by name: five words to the 'is' or 'called'
    {"colour_five_words_before_its_name", "In a shade brabo tindle mosk quorl called raw silk.", ""},
    {"colour_six_words_before_its_name", "In a shade brabo tindle mosk quorl brabo called raw silk.",
     "material silk body 'raw silk'"},
    {"colour_name_ends_at_an_and", "The colour is raw silk and the strap is suede.", "material suede strap 'suede'"},
    {"colour_name_ends_at_a_semicolon", "The colour is raw silk; the strap is suede.", "material suede strap 'suede'"},
    {"colour_is_and_nothing_behind", "Suede bag, the colour is", "material suede body 'Suede'"},
    // names in quotes: five words
    {"name_of_five_words", "'Suede Road One Two Three' tote in canvas.", "material canvas body 'canvas'"},
    {"name_of_six_words", "'Suede Road One Two Three Four' tote in canvas.",
     "material suede body 'Suede'\nmaterial canvas body 'canvas'"},
    {"name_late_in_a_sentence", "Big roomy fine soft new old tote 'Suede Road' in canvas.",
     "material canvas body 'canvas'"},
    {"title_name_of_five_words", "name | The \"Velvet One Two Three Four\" canvas tote",
     "material canvas body 'canvas'"},
    {"title_name_of_six_words", "name | The \"Velvet One Two Three Four Five\" canvas tote",
     "material velvet body 'Velvet'\nmaterial canvas body 'canvas'"},
    {"title_with_two_names", "name | \"Velvet\" canvas \"Suede\" tote", "material canvas body 'canvas'"},
    {"title_with_one_quote_mark", "name | Canvas \"Velvet tote",
     "material canvas body 'Canvas'\nmaterial velvet body 'Velvet'"},
    // teaching: a subject of six words
    {"teaching_subject_of_six", "Bonded thick soft nice old leather is made from scraps.", ""},
    {"teaching_subject_of_seven", "Bonded thick soft nice old good leather is made from scraps.",
     "material bonded-leather body 'Bonded'\nmaterial leather body 'leather'"},
    {"definition_of_a_bare_subject", "Suede is the inside of a hide.", ""},
    {"statement_on_ours", "Our suede is brushed over it.", "material suede body 'suede'"},
    {"definition_without_an_end", "Suede is", "material suede body 'Suede'"},
    // other goods
    {"thing_as_the_first_word", "Camera in suede.", ""},
    {"thing_without_a_link", "A camera, leather.", "material leather body 'leather'"},
    // denial
    {"denial_not_with", "Made not with suede but leather.",
     "material suede body denied 'suede'\nmaterial leather body 'leather'"},
    {"denial_ends_at_with", "No PVC with leather.",
     "material polyvinyl-chloride body denied 'PVC'\nmaterial leather body 'leather'"},
    {"denial_of_two", "No leather and suede.",
     "material leather body denied 'leather'\nmaterial suede body denied 'suede'"},
    {"denial_ends_before_a_part_of_its_own", "No leather and suede strap.",
     "material leather strap denied 'leather'\nmaterial suede strap 'suede'"},
    {"denial_ends_before_an_article", "No leather and the suede.",
     "material leather body denied 'leather'\nmaterial suede body 'suede'"},
    {"denial_as_the_last_word", "Leather, no", "material leather body 'Leather'"},
    {"denial_and_no_more", "No leather and", "material leather body denied 'leather'"},
    {"denial_ends_at_except", "No leather except suede.",
     "material leather body denied 'leather'\nmaterial suede body 'suede'"},
    {"answer_no_to_two", "Waterproof and vegan: no",
     "performance waterproof whole denied 'Waterproof'\nenvironmental vegan whole denied 'vegan'"},
    {"answer_no_to_either", "Waterproof / vegan: no",
     "performance waterproof whole denied 'Waterproof'\nenvironmental vegan whole denied 'vegan'"},
    {"answer_no_and_a_number", "Waterproof: no 5", "performance waterproof whole denied 'Waterproof'"},
    {"no_slip_is_no_answer", "Waterproof: no slip", "performance waterproof whole 'Waterproof'"},
    {"answer_without_a_question", ": no", ""},
    {"yes_with_words_behind", "Waterproof | yes very", ""},
    {"yes_to_praise", "Premium | yes", ""},
    {"yes_to_an_origin", "Is it made in Italy? Yes.", ""},
    // hedges: three words
    {"hedge_two_words_before", "Up to brabo tindle 80% cotton.",
     "composition cotton body hedged quantity=80 percent '80% cotton'"},
    {"hedge_three_words_before", "Up to brabo tindle mosk 80% cotton.",
     "composition cotton body quantity=80 percent '80% cotton'"},
    // shares: four words from the number to its material; three words of one that is not known
    {"share_two_words_before", "80% brabo tindle leather.",
     "composition leather body quantity=80 percent '80% brabo tindle leather'"},
    {"share_three_words_before", "80% brabo tindle mosk leather.", "material leather body 'leather'"},
    {"unknown_share_of_three_words", "60% cotton, 40% brabo tindle mosk.",
     "composition cotton body quantity=60 percent '60% cotton'\n"
     "composition other-fibres body quantity=40 percent '40% brabo tindle mosk'"},
    {"unknown_share_of_four_words", "60% cotton, 40% brabo tindle mosk quorl.",
     "composition cotton body quantity=60 percent '60% cotton'\n"
     "composition other-fibres body quantity=40 percent '40% brabo tindle mosk'"},
    {"unknown_share_without_a_name", "60% cotton, 40%.", "composition cotton body quantity=60 percent '60% cotton'"},
    // what borrows a noun: two words
    {"borrowed_noun_two_words_behind", "PU soft nice leather.",
     "material polyurethane body called=leather 'PU soft nice leather'"},
    {"borrowed_noun_three_words_behind", "PU soft nice good leather.",
     "material polyurethane body 'PU'\nmaterial leather body 'leather'"},
    // thickness: sole bends end at 12 mm, hides before splitting at 6 mm (lt-dim-07)
    {"thickest_that_is_said", "Leather 12 mm thick.",
     "material leather body 'Leather'\nmeasure thickness body quantity=12 millimetre '12 mm thick'"},
    {"thicker_than_any", "Leather 12.5 mm thick.", "material leather body 'Leather'"},
    {"thickest_without_the_word", "Leather 6 mm.",
     "material leather body 'Leather'\nmeasure thickness body quantity=6 millimetre '6 mm'"},
    {"thicker_without_the_word", "Leather 6.5 mm.", "material leather body 'Leather'"},
    {"millimetres_alone", "2 mm.", "measure thickness body quantity=2 millimetre '2 mm'"},
    {"millimetres_and_a_word", "Soft 2 mm.", "measure thickness body quantity=2 millimetre '2 mm'"},
    {"millimetres_and_two_words", "Soft good 2 mm.", ""},
    {"thickness_word_three_before", "Leather, thickness is about 9 mm.",
     "material leather body 'Leather'\nmeasure thickness body quantity=9 millimetre '9 mm'"},
    {"thickness_word_four_before", "Leather, thickness is then about 9 mm.", "material leather body 'Leather'"},
    {"coat_word_three_before", "Coating brabo tindle 0.2 mm.",
     "measure coating-thickness body quantity=0.2 millimetre '0.2 mm'"},
    {"coat_word_four_before", "Coating brabo tindle mosk 0.2 mm.", ""},
    {"coat_beyond_a_comma", "Coating, 0.2 mm.", ""},
    {"coat_behind", "0.2 mm coating.", "measure coating-thickness body quantity=0.2 millimetre '0.2 mm'"},
    // places: seven words to the country
    {"place_ten_words_behind", "Made in brabo tindle mosk quorl brabo tindle mosk quorl brabo Italy.",
     "origin made-in whole place=italy 'Made in brabo tindle mosk quorl brabo tindle mosk quorl brabo Italy'"},
    {"place_eleven_words_behind", "Made in brabo tindle mosk quorl brabo tindle mosk quorl brabo tindle Italy.", ""},
    {"town_and_its_country", "Made in Venice, Italy, with leather.",
     "origin made-in whole place=italy 'Made in Venice, Italy'\nmaterial leather body 'leather'"},
    {"country_and_another", "Made in Italy, China.", "origin made-in whole place=italy 'Made in Italy'"},
    {"labelled_country_and_another", "Origin: China, Italy",
     "origin made-in whole place=china 'China'\norigin made-in whole place=italy 'Italy'"},
    {"national_material_one_word_behind", "Italian brabo leather.",
     "origin national-material body place=italy 'Italian'\nmaterial leather body 'leather'"},
    {"national_material_two_words_behind", "Italian brabo tindle leather.", "material leather body 'leather'"},
    {"tannery_of_a_strap", "Leather strap from a British tannery.",
     "material leather strap 'Leather'\norigin tanned-in strap place=united-kingdom 'British tannery'"},
    // parts: a label of six words, brackets of four pieces, a dash behind three
    {"label_of_six_words", "One two three four five lining: cotton.", "material cotton lining 'cotton'"},
    {"label_of_seven_words", "One two three four five lining six: cotton.", "material cotton body 'cotton'"},
    {"label_before_a_dash", "One two lining - cotton.", "material cotton lining 'cotton'"},
    {"too_far_before_a_dash", "One two three lining - cotton.", "material cotton body 'cotton'"},
    {"label_in_brackets", "[One two lining] cotton", "material cotton lining 'cotton'"},
    {"too_long_in_brackets", "[One two three lining] cotton", "material cotton body 'cotton'"},
    {"part_behind_two_words", "Calfskin on the brabo tindle reverse.", "species calf-leather lining 'Calfskin'"},
    // titles in a text
    {"title_label_as_the_first_word", "Name: Leather tote with jacket\nThe jacket in wool.",
     "material leather body 'Leather'\nmaterial wool body 'wool'"},
    {"no_title_label", "Leather tote with jacket.\nThe jacket in wool.", "material leather body 'Leather'"},
    // words that label before a colon only are words elsewhere
    {"question_word_in_prose", "Italian question leather.",
     "origin national-material body place=italy 'Italian'\nmaterial leather body 'leather'"},
    {"answer_word_in_prose", "Italian answer leather.",
     "origin national-material body place=italy 'Italian'\nmaterial leather body 'leather'"},
    {"plain_label_in_prose", "Italian overview leather.",
     "origin national-material body place=italy 'Italian'\nmaterial leather body 'leather'"},
    {"title_label_in_prose", "Italian headline leather.",
     "origin national-material body place=italy 'Italian'\nmaterial leather body 'leather'"},
    {"yes_to_an_origin_in_an_attribute", "Imported | yes", ""},
    // a label on a line of its own speaks of all lines below it, one that ends a line of the next
    {"label_on_a_line_of_its_own", "Lining:\ncotton\nsuede",
     "material cotton lining 'cotton'\nmaterial suede lining 'suede'"},
    {"label_at_the_end_of_a_line", "Roomy. Lining:\ncotton\nsuede",
     "material cotton lining 'cotton'\nmaterial suede body 'suede'"},
    // units with a mark inside, and numbers with one
    {"cubic_metre_in_letters", "Foam of 35 kg/cbm.",
     "material foam filling 'Foam'\nmeasure foam-density filling quantity=35 kilogram-per-cubic-metre '35 kg/cbm'"},
    {"square_metre_in_letters", "400 g/sqm canvas.",
     "measure cloth-weight body quantity=400 gram-per-square-metre '400 g/sqm'\nmaterial canvas body 'canvas'"},
    {"kilograms_of_a_square_metre", "400 kg/m2 canvas.", "material canvas body 'canvas'"},
    {"comma_before_four_digits", "1,2345 mm leather.",
     "measure thickness body quantity=1.2345 millimetre '1,2345 mm'\nmaterial leather body 'leather'"},
    {"thousands_and_a_fraction", "1,234.5 denier nylon.",
     "measure yarn-size body quantity=1234.5 denier '1,234.5 denier'\nmaterial nylon body 'nylon'"},
    // a list of colours, whatever joins it
    {"colours_behind_a_comma", "Bag in black, bronze.", ""},
    {"colours_behind_a_slash", "Bag in black/bronze.", ""},
    {"colours_behind_an_and", "Bag in black and bronze.", ""},
    // what stands before 'and' an accessory: three words
    {"accessory_with_three_words", "Leather brabo tindle and leather cleaner.", ""},
    {"accessory_with_four_words", "Leather brabo tindle mosk and leather cleaner.", "material leather body 'Leather'"},
    // 'our own' makes a seal the seller's: sixteen pieces behind it
    {"own_sixteen_behind_a_seal",
     "Green seal, brabo tindle mosk quorl brabo tindle mosk quorl brabo tindle mosk quorl brabo tindle our own.",
     "certification self-made-seal whole 'Green seal'"},
    {"own_seventeen_behind_a_seal",
     "Green seal, brabo tindle mosk quorl brabo tindle mosk quorl brabo tindle mosk quorl brabo tindle mosk our own.",
     "certification general-seal whole 'Green seal'"},
    {"packaging_denied_behind_a_comma", "Leather bag. Delivered in a cardboard sleeve, not in plastic.",
     "material leather body 'Leather'"},
};

}  // namespace

std::span<const Row> border_rows() {
    return kRows;
}

}  // namespace grainside::claims
