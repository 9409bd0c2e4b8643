#include "known_differences.h"

namespace grainside::published {

namespace {

constexpr KnownDifference kPatternExamples[] = {
    {"genuine_leather_keyring_made_of_bonded",
     "the keyring is the product, not a ring on one: the part comes out as hardware"},
    {"raw_cut_edge_proves_solid_leather_core_bonded",
     "'edge proves solid leather' speaks of the edge; the part comes out as body"},
    {"lining_with_50_more_recycled_fibre",
     "a statement after 'with' speaks of the lining before it; the part comes out as whole"},
};

constexpr KnownDifference kLeatherWords[] = {
    // Coined names: a word that begins or ends with 'leather' and is in no vocabulary.
    {"us_a_coined_name", "'leathertex' is an unknown word; no rule looks inside words"},
    {"en_reserved_prefix", "'Leathertex' is an unknown word; no rule looks inside words"},
    {"en_reserved_suffix", "'texleather' is an unknown word; no rule looks inside words"},
    // Claims for the whole product.
    {"us_e_genuine_for_all", "'throughout' behind a material does not yet mean all of the product"},
    {"us_footwear_wholly_of_leather",
     "'made entirely of leather' is not set against the lining and sole named after it"},
    // Fibre sheets.
    {"us_f_ground_alone", "'ground leather' says leather-fibre, which the rule on bonded leather does not reach"},
    {"us_f_shredded_alone", "'shredded leather' says leather-fibre, which the rule on bonded leather does not reach"},
    {"us_f_one_share_only", "one of the two percentages is taken for both"},
    {"eu_fw_broken_down", "plain 'leather' in a title against bonded leather of the same part in the specification"},
    {"en_fibre_not_leather", "plain 'leather' against 'made of leather fibres' in one sentence"},
    {"en_bonded_fibre_share_low", "no rule knows the least share of leather fibres, 50 % of dry weight"},
    // Coating: the numbers are read and not yet held against 0.15 mm and one third.
    {"eu_fw_coat_over_limit", "no rule compares a stated coating with 0.15 mm"},
    {"en_coat_over_limit", "no rule compares a stated coating with 0.15 mm"},
    {"eu_fw_coated_leather_too_thick", "no rule compares a stated coating with one third of the total thickness"},
    // The 80 % of a footwear part.
    {"eu_80_upper_two_named", "a false alarm: both materials are named, as the directive asks below 80 %"},
    {"eu_80_textile_upper_missed", "the rule on 80 % knows leather only, not textile"},
    // Splits.
    {"en_split_not_said", "a removed grain layer is told in words that no term covers"},
    {"en_reserved_adjective", "'leather' before another material is read as two materials, not as a borrowed name"},
    // Imitated kinds.
    {"us_b_only_the_look",
     "'pigskin wallet in embossed cowhide' is read as two hides; crocodile and lizard are caught"},
    // The fourth class of the footwear label, 'other materials', is a fixed wording and no evasion.
    {"eu_fw_pictogram_words", "a false alarm on 'other materials' of the outsole"},
    {"eu_fw_pictogram_words_coated", "a false alarm on 'other materials' of the outsole"},
    // National laws, in their languages.
    {"by_market_faux_cuir_fr", "'faux cuir' is no term"},
    {"by_market_simili_cuir_fr", "the rule on reserved nouns does not reach the one-word names of French"},
    {"by_market_piel_sintetica_es", "the rule on reserved nouns does not reach 'piel sintetica'"},
    {"by_market_couro_sintetico_br", "'couro sintetico' is no term"},
    {"by_market_recycling_leder_de", "'Recycling-Leder' is no term"},
};

}  // namespace

std::span<const KnownDifference> known_differences_of_pattern_examples() {
    return kPatternExamples;
}

std::span<const KnownDifference> known_differences_of_leather_words() {
    return kLeatherWords;
}

}  // namespace grainside::published
