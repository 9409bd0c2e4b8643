#include "known_differences.h"

namespace grainside::published {

namespace {

constexpr KnownDifference kPatternExamples[] = {
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
    {"en_bonded_fibre_share_low", "no rule knows the least share of leather fibres, 50 % of dry weight"},
    // Coating: the numbers are read and not yet held against 0.15 mm and one third.
    {"eu_fw_coat_over_limit", "no rule compares a stated coating with 0.15 mm"},
    {"en_coat_over_limit", "no rule compares a stated coating with 0.15 mm"},
    {"eu_fw_coated_leather_too_thick", "no rule compares a stated coating with one third of the total thickness"},
    // The 80 % of a footwear part.
    {"eu_80_textile_upper_missed", "the rule on 80 % knows leather only, not textile"},
    // Splits.
    {"en_split_not_said", "a removed grain layer is told in words that no term covers"},
    {"en_reserved_adjective", "'leather' before another material is read as two materials, not as a borrowed name"},
};

}  // namespace

std::span<const KnownDifference> known_differences_of_pattern_examples() {
    return kPatternExamples;
}

std::span<const KnownDifference> known_differences_of_leather_words() {
    return kLeatherWords;
}

}  // namespace grainside::published
