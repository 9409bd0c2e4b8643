#include "vocabulary/grammar_concepts.h"

#include <fmt/format.h>

#include <array>
#include <string_view>
#include <utility>

namespace grainside::vocabulary {

namespace {

struct GrammarConcept {
    std::string_view name;
    ConceptId GrammarConcepts::*member;
};
constexpr auto kGrammarConcepts = std::to_array<GrammarConcept>({
    {"leather", &GrammarConcepts::leather},
    {"trait-hide-word", &GrammarConcepts::hide_word},
    {"trait-borrows-hide", &GrammarConcepts::borrows_hide},
    {"trait-borrowed-fibre", &GrammarConcepts::borrowed_fibre},
    {"textile", &GrammarConcepts::textile},
    {"fabric", &GrammarConcepts::fabric},
    {"metal", &GrammarConcepts::metal},
    {"precious-metal", &GrammarConcepts::precious_metal},
    {"plastic", &GrammarConcepts::plastic},
    {"coated-fabric", &GrammarConcepts::coated_fabric},
    {"coated-leather", &GrammarConcepts::coated_leather},
    {"coated-split-leather", &GrammarConcepts::coated_split},
    {"split-leather", &GrammarConcepts::split_leather},
    {"leather-look-material", &GrammarConcepts::look_material},
    {"imitation-leather", &GrammarConcepts::imitation_leather},
    {"imitation-suede", &GrammarConcepts::imitation_suede},
    {"suede", &GrammarConcepts::suede},
    {"tone-finish", &GrammarConcepts::tone_finish},
    {"embossed", &GrammarConcepts::embossed},
    {"thickness", &GrammarConcepts::thickness},
    {"coating-thickness", &GrammarConcepts::coating_thickness},
    {"plating-thickness", &GrammarConcepts::plating_thickness},
    {"cloth-weight", &GrammarConcepts::cloth_weight},
    {"yarn-size", &GrammarConcepts::yarn_size},
    {"foam-density", &GrammarConcepts::foam_density},
    {"thread-count", &GrammarConcepts::thread_count},
    {"fill-power", &GrammarConcepts::fill_power},
    {"made-in", &GrammarConcepts::made_in},
    {"national-material", &GrammarConcepts::national_material},
    {"place", &GrammarConcepts::place},
    {"standard-cited", &GrammarConcepts::standard_cited},
    {"foam", &GrammarConcepts::foam},
    {"gold", &GrammarConcepts::gold},
    {"karat-gold", &GrammarConcepts::karat_gold},
    {"plating", &GrammarConcepts::plating},
    {"leather-fibre-material", &GrammarConcepts::fibre_material},
    {"other-fibres", &GrammarConcepts::other_fibres},
    {"trait-synthetic", &GrammarConcepts::trait_synthetic},
    {"non-leather", &GrammarConcepts::non_leather},
    {"trait-needs-place", &GrammarConcepts::needs_place},
    {"microfibre", &GrammarConcepts::microfibre},
    {"wholly-made-in", &GrammarConcepts::wholly_made_in},
    {"only-the-packaging", &GrammarConcepts::only_packaging},
    {"tanned-in", &GrammarConcepts::tanned_in},
    {"sourced-from", &GrammarConcepts::sourced_from},
    {"trait-coat", &GrammarConcepts::trait_coat},
    {"handmade", &GrammarConcepts::handmade},
    {"handmade-in", &GrammarConcepts::handmade_in},
});

}  // namespace

void resolve_grammar_concepts(Vocabulary& vocabulary, document::Faults& faults) {
    for (const auto& [name, member] : kGrammarConcepts) {
        const ConceptId id = vocabulary.concepts.find(name);
        vocabulary.known.*member = id;
        if (id != 0) continue;
        Issue issue;
        issue.code = "unknown-concept";
        issue.file = "concepts.yaml";
        issue.message = fmt::format("concept '{}' is missing, and the grammar needs it", name);
        faults.add(std::move(issue));
    }
}

ConceptSet concepts_of_grammar(const Vocabulary& vocabulary) {
    ConceptSet set(vocabulary.concepts.size());
    for (const auto& [name, member] : kGrammarConcepts) set.insert(vocabulary.known.*member);
    return set;
}

}  // namespace grainside::vocabulary
