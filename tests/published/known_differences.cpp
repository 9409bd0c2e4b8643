#include "known_differences.h"

namespace grainside::published {

namespace {

constexpr KnownDifference kWorkedExamples[] = {
    {"gg_3d_4b_preferable_for_lining",
     "the general word stays vague by our policy, also where the words behind it name one proven benefit"},
    {"gg_4_1b_eco_because_recycled_proven",
     "as above, and misleading by the us rule: no document shows a general benefit"},
    {"gg_4_2b_greener_by_weight_proven", "as above: 'greener' is taken for the general word"},
    {"gg_4_5_less_plastic_strap_proven", "as above: vague, with the one benefit named and proven"},
    {"gg_6_5b_member_only", "the eco word stands in the name of a club that the seller says is no seal"},
    {"gg_6_6a_earth_seal", "'shown with' takes the words for a prop in the picture; without it the seal is flagged"},
    {"jg_10_1_gold_with_report", "the report is on the rust, and the karat number beside it wants an assay of its own"},
    {"ftc23_3c_gold_filled_filled_below_a_twentieth", "'1/40 of the weight' is not read as a share"},
    {"tx_5_asterisk", "a coined fibre name alone is no claim, so nothing can stand behind its asterisk"},
    {"tx_40_linen_look", "the look word before a named cloth: canvas may be of linen; nothing in the words denies it"},
    {"tx_41a_cotton_lined", "what a listing leaves out is no finding: a rule flags words"},
    {"et_9_no_shares", "as above: shares that are missing"},
    {"et_12_phrase_missing", "as above: a phrase that is missing"},
    {"op_8_screwdriver", "'assembled in' says no more than it says; how little was done there is not read"},
    {"op_10_imported_gold", "'key ring' is read as a fitting, so the claim is of a part"},
    {"eu_gi_style_of_registered_name",
     "no list of words can know registered names; '-style' behind an unknown name says nothing"},
    {"or_it350_tricolour_badge", "an emblem names no place"},
    {"lt_cv_06_split_as_grain",
     "the two statements stand in one field each of the whole outside, and both are true of a part of it"},
};

}  // namespace

std::span<const KnownDifference> known_differences_of_pattern_examples() {
    return {};
}

std::span<const KnownDifference> known_differences_of_leather_words() {
    return {};
}

std::span<const KnownDifference> known_differences_of_worked_examples() {
    return kWorkedExamples;
}

}  // namespace grainside::published
