// design.md 4.6: negation, hedge, disclosure. A denied statement is a claim, and denied.
#include "claim_rows.h"

namespace grainside::claims {
namespace {

constexpr Row kRows[] = {
    {"contains_no", "Contains no leather.", "material leather body denied 'leather'"},
    {"no", "No PVC.", "material polyvinyl-chloride body denied 'PVC'"},
    {"not", "Not bonded leather.", "material bonded-leather body denied 'bonded leather'"},
    {"comma_not", "A tote, not full grain.", "grain full-grain-leather body denied 'full grain'"},
    {"free_of", "Free of wool.", "material wool body denied 'wool'"},
    {"free_suffix", "PVC-free tote.", "composition pvc-free whole 'PVC-free'"},
    {"without", "Made without leather.", "material leather body denied 'leather'"},
    {"neither_nor", "Neither leather nor PVC.",
     "material leather body denied 'leather'\nmaterial polyvinyl-chloride body denied 'PVC'"},
    {"list_under_one_no", "No leather, wool or silk.",
     "material leather body denied 'leather'\nmaterial wool body denied 'wool'\nmaterial silk body denied 'silk'"},
    {"but_ends_it", "Not leather but polyurethane.",
     "material leather body denied 'leather'\nmaterial polyurethane body 'polyurethane'"},
    {"stop_ends_it", "No PVC. Leather strap.",
     "material polyvinyl-chloride body denied 'PVC'\nmaterial leather strap 'Leather'"},
    {"semicolon_ends_it", "No PVC; leather strap.",
     "material polyvinyl-chloride body denied 'PVC'\nmaterial leather strap 'leather'"},
    {"bracket_ends_it", "Polyurethane (not leather) tote.",
     "material polyurethane body 'Polyurethane'\nmaterial leather body denied 'leather'"},
    {"denied_performance", "Not waterproof.", "performance waterproof whole denied 'waterproof'"},
    {"denied_statement_after_a_material", "Leather, not waterproof.",
     "material leather body 'Leather'\nperformance waterproof whole denied 'waterproof'"},
    {"stated_beside_denied", "Leather tote with no PVC.",
     "material leather body 'Leather'\nmaterial polyvinyl-chloride body denied 'PVC'"},
    {"faux_is_no_denial", "Faux leather.", "material imitation-leather body called=leather 'Faux leather'"},
    {"leather_free", "Leather-free bag.", "material leather body denied 'Leather-free'"},
    {"hedge", "Up to 80% cotton.", "composition cotton body hedged quantity=80 percent '80% cotton'"},
    {"no_hedge", "80% cotton.", "composition cotton body quantity=80 percent '80% cotton'"},
    {"disclosure_in_brackets", "Imitation leather (polyurethane) tote.",
     "material imitation-leather body called=leather 'Imitation leather'\nmaterial polyurethane body 'polyurethane'"},
    {"fibres", "Made of 70% leather fibres.",
     "composition leather-fibre body quantity=70 percent '70% leather fibres'"},
    {"with_no", "With no PVC inside.", "material polyvinyl-chloride lining denied 'PVC'"},
    {"isnt", "This isn't leather.", "material leather body denied 'leather'"},
    {"not_genuine", "Not genuine leather.", "material leather body denied 'leather'"},
    {"denied_then_stated_part", "No leather in the body; the strap is leather.",
     "material leather body denied 'leather'\nmaterial leather strap 'leather'"},
    {"denial_in_an_attribute", "Contains leather | no", ""},
    {"is_not", "The strap is not leather.", "material leather strap denied 'leather'"},
    {"never_denies", "Never made of plastic.", "material plastic body denied 'plastic'"},
    {"not_just_denies_nothing", "Not just leather: full grain leather.",
     "material leather body 'leather'\ngrain full-grain-leather body 'full grain leather'"},
    {"label_answered_with_no", "Waterproof: no", "performance waterproof whole denied 'Waterproof'"},
    {"label_answered_with_no_and_a_bracket", "Waterproof: no (cotton)",
     "performance waterproof whole denied 'Waterproof'\nmaterial cotton body 'cotton'"},
    {"no_comma_answers", "A: No, it is plain cotton.", "material cotton body 'cotton'"},
    {"never_with", "Never with plastic.", "material plastic body denied 'plastic'"},
};

}  // namespace

std::span<const Row> denial_rows() {
    return kRows;
}

}  // namespace grainside::claims
