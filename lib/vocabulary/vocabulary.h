// Everything that the grammar knows of one language, and the concepts that its words stand for.
#ifndef GRAINSIDE_VOCABULARY_VOCABULARY_H
#define GRAINSIDE_VOCABULARY_VOCABULARY_H

#include <array>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "document/document.h"
#include "document/faults.h"
#include "vocabulary/affixes.h"
#include "vocabulary/concept_tree.h"
#include "vocabulary/misspellings.h"
#include "vocabulary/term_trie.h"
#include "vocabulary/word_table.h"

namespace grainside::vocabulary {

constexpr std::size_t kMostCategories = 31;  // beside 'any'; a condition holds them as bits

// A kind of product: which part a claim without a part speaks of.
struct Category {
    std::string name;
    Part main_part = Part::body;
    std::vector<std::uint8_t> kin;  // other categories whose nouns may name the same product
};

// Concepts that the grammar itself asks for, by the names of GrammarConcept in load_vocabulary.cpp.
struct GrammarConcepts {
    ConceptId leather, hide_word, borrows_hide, borrowed_fibre, textile, fabric, metal, precious_metal, plastic,
        coated_fabric, coated_leather, coated_split, split_leather, look_material, imitation_leather, imitation_suede,
        suede, tone_finish, embossed, thickness, coating_thickness, plating_thickness, cloth_weight, yarn_size,
        foam_density, thread_count, fill_power, made_in, national_material, place, standard_cited, foam, gold,
        karat_gold, plating, fibre_material, other_fibres, trait_synthetic, non_leather, needs_place, microfibre,
        tanned_in, sourced_from, only_packaging, wholly_made_in, trait_coat, handmade, handmade_in;
};

// Immutable once loaded; any number of threads may read it.
struct Vocabulary {
    ConceptTree concepts;
    WordTable words;
    TermTrie terms;
    Misspellings misspellings;
    Affixes affixes;
    std::vector<Category> categories;  // [0] is 'any'
    GrammarConcepts known{};
    std::size_t term_forms = 0;  // after spelling variants
};

// Loads concepts.yaml, parts.yaml and vocabulary/LANG/*.yaml from `documents`; other files are left alone.
// Faults: those of ConceptTree, and "unknown-role", "unknown-part", "unknown-category", "unknown-unit", "unknown-key",
// "duplicate-category", "too-many-categories", "missing-key", "missing-file", "wrong-type", "empty-term".
void load_vocabulary(std::span<const document::Document> documents, Vocabulary& vocabulary, document::Faults& faults);

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_VOCABULARY_H
