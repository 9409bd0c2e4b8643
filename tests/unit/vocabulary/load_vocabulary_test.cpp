#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "document/yaml_document.h"
#include "support/fault_dump.h"
#include "text/tokenizer.h"
#include "vocabulary/matcher.h"
#include "vocabulary/vocabulary.h"

namespace grainside::vocabulary {
namespace {

// A vocabulary of the default concepts and parts, and of one file of words.
struct Loaded {
    document::Faults faults;
    std::vector<document::Document> documents;
    Vocabulary vocabulary;
};

void load(std::string_view words, Loaded& loaded) {
    document::Faults unused;
    for (document::Document& document : document::read_yaml_folder(GRAINSIDE_RULES_FOLDER, unused)) {
        if (document.file() == "concepts.yaml" || document.file() == "parts.yaml")
            loaded.documents.push_back(std::move(document));
    }
    auto document = document::parse_yaml("vocabulary/en/test.yaml", std::string(words), loaded.faults);
    ASSERT_TRUE(document.has_value());
    loaded.documents.push_back(std::move(*document));
    load_vocabulary(loaded.documents, loaded.vocabulary, loaded.faults);
}

struct FaultRow {
    std::string_view name, text, want;
};

constexpr FaultRow kFaults[] = {
    {"none", "- {says: leather, words: [leather, hide]}\n", ""},
    {"unknown_concept", "- {says: lether, words: [lether]}\n", "1:10 unknown-concept"},
    {"unknown_called", "- {says: leather, called: hyde, words: [hyde]}\n", "1:27 unknown-concept"},
    {"unknown_key", "- {says: leather, word: [leather]}\n", "1:19 unknown-key"},
    {"unknown_part", "- {part: pocket, nouns: [pocket]}\n", "1:10 unknown-part"},
    {"a_family_and_several", "- {part: hardware, family: ring, several: yes, nouns: [ring]}\n",
     "1:43 family-of-several"},
    {"a_family_and_not_several", "- {part: hardware, family: ring, several: no, nouns: [ring]}\n", ""},
    {"unknown_category", "- {category: bags, nouns: [bag]}\n", "1:14 unknown-category"},
    {"homonyms_of_an_unknown_category", "- {category: bags, homonyms: [sling]}\n", "1:14 unknown-category"},
    {"affixes_of_an_unknown_concept", "- {says: lether, affixes: [lether]}\n", "1:10 unknown-concept"},
    {"unknown_role", "- {grammar: nix, words: [no]}\n", "1:13 unknown-role"},
    {"unknown_spelling_list", "- {spelling: slips, words: [lether]}\n", "1:14 unknown-role"},
    {"unknown_unit", "- {unit: furlong, words: [furlong]}\n", "1:10 unknown-unit"},
    {"entry_that_says_nothing", "- {words: [leather]}\n", "1:3 missing-key"},
    {"file_is_a_mapping", "says: leather\n", "1:1 wrong-type"},
    {"term_is_a_list", "- {says: leather, words: [[leather]]}\n", "1:27 wrong-type"},
    {"term_without_a_word", "- {says: leather, words: ['  ']}\n", "1:27 empty-term"},
    {"term_with_a_mark", "- {says: leather, words: ['leather, real']}\n", "1:27 empty-term"},
    {"spelling_pair_of_three", "- {spelling: pairs, pairs: [[grey, gray, graye]]}\n", "1:29 wrong-type"},
    {"place_twice", "- {place: atlantis, names: [a]}\n- {place: atlantis, names: [b]}\n", "2:11 duplicate-concept"},
    {"all_at_once", "- {says: lether, words: [x]}\n- {part: pocket, nouns: [y]}\n- {unit: furlong, words: [z]}\n",
     "1:10 unknown-concept; 2:10 unknown-part; 3:10 unknown-unit"},
};

class VocabularyFaults : public testing::TestWithParam<FaultRow> {};

TEST_P(VocabularyFaults, AreToldWithTheirPlace) {
    Loaded loaded;
    load(GetParam().text, loaded);
    std::vector<Issue> issues = loaded.faults.take();
    for (const Issue& issue : issues) EXPECT_EQ(issue.file, "vocabulary/en/test.yaml");
    EXPECT_EQ(support::dump_places(issues), GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, VocabularyFaults, testing::ValuesIn(kFaults),
                         [](const auto& row) { return std::string(row.param.name); });

// The faults of a parts.yaml of `text`.
std::string faults_of_parts(std::string text) {
    document::Faults faults;
    std::vector<document::Document> documents;
    for (document::Document& document : document::read_yaml_folder(GRAINSIDE_RULES_FOLDER, faults)) {
        if (document.file() == "concepts.yaml") documents.push_back(std::move(document));
    }
    documents.push_back(std::move(*document::parse_yaml("parts.yaml", std::move(text), faults)));
    Vocabulary vocabulary;
    load_vocabulary(documents, vocabulary, faults);
    return support::dump_places(faults.take());
}

TEST(CategoryFaults, AreToldWithTheirPlace) {
    EXPECT_EQ(faults_of_parts("- {category: bag, main_part: body, kin: bag}\n"), "");
    EXPECT_EQ(faults_of_parts("- {category: bag, main_part: flap}\n"), "1:30 unknown-part");
    EXPECT_EQ(faults_of_parts("- {category: bag}\n"), "1:3 missing-key");
    EXPECT_EQ(faults_of_parts("- {category: bag, main_part: body}\n- {category: bag, main_part: strap}\n"),
              "2:14 duplicate-category");
    EXPECT_EQ(faults_of_parts("- {category: bag, main_part: body, kin: [tote]}\n"), "1:41 unknown-category");
    std::string many;
    for (std::size_t i = 0; i <= kMostCategories; ++i) {
        many += "- {category: c" + std::to_string(i) + ", main_part: body}\n";
    }
    EXPECT_EQ(faults_of_parts(many), "32:14 too-many-categories");
}

TEST(VocabularyFaults, MissingFilesAreNamed) {
    document::Faults faults;
    Vocabulary vocabulary;
    load_vocabulary({}, vocabulary, faults);
    std::string missing;
    for (const Issue& issue : faults.take()) {
        if (issue.code == "missing-file") missing += issue.file + " ";
    }
    EXPECT_EQ(missing, "concepts.yaml parts.yaml ");
}

// ---- spelling variants, through to the matcher -----------------------------------------------------------------

constexpr std::string_view kWords = R"(
- {says: full-grain-leather, words: [full grain]}
- {says: cowhide, words: [cow hide, cowskin]}
- {says: polyurethane, words: [polyurethane leather]}
- {says: microfibre, words: [microfibre]}
- {says: nickel-free, words: [nickel free]}
- {says: waterproof, words: [waterproof]}
- {says: cotton, words: [cotton]}
- {says: linen, words: [cottons]}
- {says: nickel-free, words: [no azo colours]}
- {grammar: tone-word, words: [colour]}
- {part: strap, nouns: [strap, wrist strap]}
- {part: hardware, nouns: [d ring]}
- {grammar: negator, words: [without]}
- {spelling: pairs, pairs: [[fibre, fiber], [grey, gray], [colour, color]]}
- {spelling: not-misspelt, words: [waterproofs]}
)";

struct TermRow {
    std::string_view name, text, want;  // want: the concepts, parts and '-' for other senses of the hits, in order
};

constexpr TermRow kTerms[] = {
    {"as_listed", "full grain", "full-grain-leather"},
    {"hyphenated", "full-grain", "full-grain-leather"},
    {"joined", "fullgrain", "full-grain-leather"},
    {"capitals", "FULL GRAIN", "full-grain-leather"},
    {"british", "microfibre", "microfibre"},
    {"american", "microfiber", "microfibre"},
    {"american_plural", "microfibers", "microfibre"},
    {"american_of_one_listed_in_both_numbers", "color, no azo colors", "- nickel-free"},
    {"plural", "cow hides", "cowhide"},
    {"joined_plural", "cowhides", "cowhide"},
    {"plural_of_a_part", "straps, wrist straps, wriststraps", "strap strap strap"},
    {"listed_word_stays_itself", "cottons", "linen"},
    {"first_word_takes_no_plural", "cows hide", ""},
    {"digits_and_single_letters_are_not_joined", "dring", ""},
    {"misspelt", "polyurethan leather, waterprof, microfibe", "polyurethane waterproof microfibre"},
    {"protected", "waterproofs", "waterproof"},  // the plural of a listed word is no slip
    {"short_words_are_never_slips", "coton, straap, fulll grain", ""},
    {"grammar_words_are_never_slips", "wihtout, withoutt", ""},
    {"marks_cut", "full, grain", ""},
    {"part_of_a_term", "full", ""},
};

class SpellingVariants : public testing::TestWithParam<TermRow> {};

TEST_P(SpellingVariants, StandForTheirTerm) {
    Loaded loaded;
    load(kWords, loaded);
    ASSERT_EQ(support::dump_places(loaded.faults.take()), "");
    text::Tokens tokens;
    std::vector<WordId> words;
    std::vector<Hit> hits;
    text::tokenize(GetParam().text, tokens);
    match_terms(loaded.vocabulary, tokens, words, hits);
    std::string found;
    for (const Hit& hit : hits) {
        const Sense& sense = loaded.vocabulary.terms.senses(hit.end).front();
        found += found.empty() ? "" : " ";
        if (sense.role == Role::meaning) {
            found += loaded.vocabulary.concepts[sense.concept_id].name;
        } else {
            found += sense.role == Role::part ? name_of(static_cast<Part>(sense.value)) : std::string_view("-");
        }
    }
    EXPECT_EQ(found, GetParam().want);
}

INSTANTIATE_TEST_SUITE_P(Rows, SpellingVariants, testing::ValuesIn(kTerms),
                         [](const auto& row) { return std::string(row.param.name); });

}  // namespace
}  // namespace grainside::vocabulary
