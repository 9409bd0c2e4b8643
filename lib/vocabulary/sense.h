// What a term can mean to the grammar.
#ifndef GRAINSIDE_VOCABULARY_SENSE_H
#define GRAINSIDE_VOCABULARY_SENSE_H

#include <cstdint>
#include <optional>
#include <string_view>

#include "grainside/claim.h"

namespace grainside::vocabulary {

// The grammar's word classes. Which words they hold is written in rules/vocabulary/LANG/, under the names of
// role_names() in sense.cpp; rules/README.md explains each.
enum class Role : std::uint8_t {
    meaning,      // stands for a concept
    part,         // names a part: value is a Part
    part_before,  // 'lined with': what follows is of the part
    part_after,   // 'leather-lined': what stands before is of the part
    product,      // names a product: value is a category
    accessory,    // names what comes with the product or cares for it
    thing,        // names an everyday thing that is none of the goods: 'camera'
    place_name,
    place_adjective,
    unit,  // value is a Unit
    // word classes without a value
    determiner,
    own,
    link,
    with,
    comes_along,  // 'comes with': a with, and another product behind it is not what is sold
    backing,      // 'backed with': a link, and what follows is the back
    at_part,      // 'on the': 'suede on the reverse' is of the reverse
    copula,
    conjunction,
    alternative,
    negator,
    negation_end,
    exception,  // 'except': a negation_end, and percentages behind it are of no sum
    free_suffix,
    hedge,
    genuine,
    solid,
    pure,
    all,
    all_after,  // behind a material: 'cowhide throughout'
    imitation,
    look,
    coated,
    comparison,
    comparison_suffix,
    other_product,
    other_product_after,
    accessory_before,
    teaching,
    crowd,
    crowd_opener,  // the same where it begins a clause: 'Most diaries have bonded covers'
    reviewer,      // behind a quotation: 'wrote', 'verified buyer'
    currency,      // behind a number: '+0.80 USD'
    care,
    idiom,
    colour,
    tone_word,
    blend,
    standard,
    document,
    result,
    affirm,
    deny,
    thickness_word,
    coat_word,  // 'coating': the thickness beside it is the coat's
    size_word,
    purpose,
    making,         // 'made': 'French made' tells the origin
    naming,         // 'is called': behind a colour word it gives the colour's name
    tannage_label,  // 'Tannage: chrome'
    article,
    silent_label,
    main_label,
    colour_label,
    origin_label,
    leather_origin_label,  // 'Leather origin: Italy' speaks of the hides
    question_label,        // 'Q:'
    plain_label,           // 'Details:' names no part, though 'details' is a noun for one
    title_label,           // 'Product name:': what stands behind it is read as a title
    answer_label,          // 'A:' goes on where the question stood
    more_than,
    breaks
};
std::optional<Role> role_named(std::string_view name) noexcept;  // only the word classes without a value

// When a meaning counts.
enum class Condition : std::uint8_t {
    always,
    before_hide,      // a hide word stands to the right in the same phrase
    before_material,  // a material, part or product stands to the right in the same phrase
    before_product,   // a product stands to the right in the same phrase ('kangaroo belt')
    before_hardware,  // the phrase's head is a hardware noun
    after_genuine,    // a word like genuine or solid stands to the left in the same phrase
    after_borrower,   // directly after a plastic, plant sheet or imitation
    as_value,         // it is what a part is said to be of: after 'in', 'is' or a label, or right before a part's noun
    with_edge,        // edges are spoken of close by
    with_hardware,    // hardware or a metal is spoken of close by
    as_label,     // of a part's noun: before a mark, an 'in' or an 'is' ('Inside: suede'), not before a word ('inside
                  // arms')
    after_share,  // a percentage stands close before it: 'kills 99.9% of germs'
    after_own,    // 'our own' stands before it in the same phrase
    on_strap,     // where the product is a strap: 'back' is its reverse
    as_tannage,   // below a label for tanning: 'Tannage: chrome'
    likened,      // right before a hyphen and a word like soft: 'mink-soft'
};
std::optional<Condition> condition_named(std::string_view key) noexcept;  // the YAML key; `words` is always

struct Sense {
    Role role = Role::meaning;
    Condition condition = Condition::always;
    std::uint8_t value = 0;           // a Part, category or Unit by role
    bool homonym : 1 = false;         // of a product: an everyday word besides, so that it never tells another product
    bool main_elsewhere : 1 = false;  // of a part's noun: on goods whose main part is another it names that one
    ConceptId concept_id = 0;         // of a meaning or a place; of a part's noun the number of its family, 0 = none
    ConceptId called = 0;  // of a meaning: the hide noun that the term itself borrows ('cork leather'); 0 = none
};

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_SENSE_H
