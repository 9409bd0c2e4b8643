// From the documents of a rule folder to a vocabulary.
#include <fmt/format.h>

#include <optional>
#include <string>
#include <vector>

#include "text/tokenizer.h"
#include "vocabulary/grammar_concepts.h"
#include "vocabulary/term_forms.h"
#include "vocabulary/vocabulary.h"

namespace grainside::vocabulary {

using document::Document;
using document::Faults;
using document::Node;

namespace {

class Loader {
public:
    Loader(Vocabulary& vocabulary, Faults& faults) : vocabulary_(vocabulary), faults_(faults), terms_(vocabulary) {}

    void load(std::span<const Document> documents) {
        bool has_concepts = false;
        bool has_parts = false;
        for (const Document& document : documents) {
            if (document.file() == "concepts.yaml") {
                vocabulary_.concepts.load(document, faults_);
                has_concepts = true;
            } else if (document.file() == "parts.yaml") {
                load_categories(document);
                has_parts = true;
            }
        }
        if (!has_concepts) missing("concepts.yaml");
        if (!has_parts) missing("parts.yaml");
        // Without them every word would be a fault of its own, and hide this one.
        if (!has_concepts || !has_parts) return;
        if (vocabulary_.categories.empty()) vocabulary_.categories.push_back({"any", Part::body, {}});
        for (const Document& document : documents) {
            if (document.file().starts_with("vocabulary/")) add_places(document);
        }
        vocabulary_.concepts.close(faults_);
        resolve_grammar_concepts(vocabulary_, faults_);
        for (const Document& document : documents) {
            if (document.file().starts_with("vocabulary/")) load_words(document);
        }
        terms_.build();
    }

private:
    void missing(std::string_view file) {
        Issue issue;
        issue.code = "missing-file";
        issue.file = file;
        issue.message = fmt::format("the rule folder has no {}", file);
        issue.hint = "point --rules at a folder laid out like the default one (rules/README.md, section 1)";
        faults_.add(std::move(issue));
    }

    void load_categories(const Document& document) {
        vocabulary_.categories.push_back({"any", Part::body, {}});
        for (Node node : document.root()) {
            if (!check_keys(document, node, {"category", "main_part", "kin"}, faults_)) continue;
            const Node name = node.find("category");
            const Node part = node.find("main_part");
            if (!name.exists() || !part.exists()) {
                faults_.error(document, node, "missing-key", "a category needs `category` and `main_part`");
                continue;
            }
            const auto named = read_part(document, part);
            if (!named) continue;
            if (name.text() == "any") {
                vocabulary_.categories.front().main_part = *named;
            } else if (category_named(name.text()) != 0) {
                faults_.error(document, name, "duplicate-category",
                              fmt::format("category '{}' is there twice", name.text()));
            } else if (vocabulary_.categories.size() > kMostCategories) {
                faults_.error(document, name, "too-many-categories",
                              fmt::format("more than {} categories", kMostCategories));
            } else {
                vocabulary_.categories.push_back({std::string(name.text()), *named, {}});
            }
        }
        for (Node node : document.root()) load_kin(document, node);
    }

    // Kin is named both ways: a pouch may be called a bag, and a bag a pouch.
    void load_kin(const Document& document, Node node) {
        const std::uint8_t category = category_named(node.find("category").text());
        const Node kin = node.find("kin");
        if (!kin.exists() || category == 0) return;
        for (std::string_view name : read_words(document, kin, faults_)) {
            const std::uint8_t other = category_named(name);
            if (other == 0) {
                report_unknown_category(document, kin, name);
                continue;
            }
            vocabulary_.categories[category].kin.push_back(other);
            vocabulary_.categories[other].kin.push_back(category);
        }
    }

    // Index of a category; 0 where there is none of that name.
    std::uint8_t category_named(std::string_view name) const {
        for (std::size_t i = 1; i < vocabulary_.categories.size(); ++i) {
            if (vocabulary_.categories[i].name == name) return static_cast<std::uint8_t>(i);
        }
        return 0;
    }

    void report_unknown_category(const Document& document, Node at, std::string_view name) {
        std::vector<std::string_view> names;
        for (const Category& category : vocabulary_.categories) names.push_back(category.name);
        faults_.error(document, at, "unknown-category", fmt::format("there is no category '{}'", name),
                      faults_.suggestion(name, names));
    }

    std::optional<Part> read_part(const Document& document, Node node) {
        const auto named = part_named(node.text());
        if (!named) {
            std::vector<std::string_view> names;
            for (std::size_t p = 0; p < kPartCount; ++p) names.push_back(name_of(static_cast<Part>(p)));
            faults_.error(document, node, "unknown-part", fmt::format("there is no part '{}'", node.text()),
                          faults_.suggestion(node.text(), names));
        }
        return named;
    }

    void add_places(const Document& document) {
        for (Node node : document.root()) {
            const Node place = node.find("place");
            if (!place.exists()) continue;
            std::string wording(node.find("wording").exists() ? node.find("wording").text() : place.text());
            if (!node.find("wording").exists()) {
                bool start = true;
                for (char& c : wording) {
                    if (c == '-') c = ' ';
                    if (start && c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
                    start = c == ' ';
                }
            }
            const std::string_view within = node.find("within").exists() ? node.find("within").text() : "place";
            vocabulary_.concepts.add(document, place, place.text(), within, std::move(wording), faults_);
        }
    }

    void load_words(const Document& document) {
        if (!document.root().is_sequence()) {
            faults_.error(document, document.root(), "wrong-type", "a vocabulary file is a sequence of entries");
            return;
        }
        for (Node node : document.root()) {
            if (node.find("says").exists()) {
                load_meanings(document, node);
            } else if (node.find("part").exists()) {
                load_part_words(document, node);
            } else if (node.find("category").exists()) {
                load_product_words(document, node);
            } else if (node.find("place").exists()) {
                load_place_words(document, node);
            } else if (node.find("grammar").exists()) {
                load_grammar_words(document, node);
            } else if (node.find("unit").exists()) {
                load_unit_words(document, node);
            } else if (node.find("spelling").exists()) {
                load_spelling(document, node);
            } else {
                faults_.error(document, node, "missing-key", "an entry that says nothing of its words",
                              "begin it with says, part, category, place, grammar, unit or spelling");
            }
        }
    }

    void load_meanings(const Document& document, Node node) {
        if (!check_keys(document, node,
                        {"says", "called", "words", "before_hide", "before_material", "before_product",
                         "before_hardware", "after_genuine", "after_borrower", "as_value", "with_edge", "with_hardware",
                         "likened", "after_own", "after_share", "as_tannage", "affixes"},
                        faults_)) {
            return;
        }
        const ConceptId id = vocabulary_.concepts.require(document, node.find("says"), faults_);
        if (id == 0) return;
        const Node called = node.find("called");
        const ConceptId called_id =
            called.exists() ? vocabulary_.concepts.require(document, called, faults_) : ConceptId{0};
        if (const Node affixes = node.find("affixes"); affixes.exists()) {
            for (std::string_view affix : read_words(document, affixes, faults_)) add_affix(affix, id);
        }
        for (Node child : node) {
            const auto condition = condition_named(child.key());
            if (!condition) continue;
            Sense sense;
            sense.condition = *condition;
            sense.concept_id = id;
            sense.called = called_id;
            add_terms(document, child, sense, true);
        }
    }

    // A coined name counts where it names what a part or product is of: 'tote in leathertex', 'leathertex tote'.
    void add_affix(std::string_view affix, ConceptId id) {
        // No word of a text holds a space, so that none is taken for the affix itself.
        const WordId word = vocabulary_.words.intern(fmt::format("{} ...", affix));
        vocabulary_.affixes.add(affix, word);
        for (Condition condition : {Condition::as_value, Condition::before_product}) {
            Sense sense;
            sense.condition = condition;
            sense.concept_id = id;
            vocabulary_.terms.add(std::vector<WordId>{word}, sense);
        }
    }

    // Numbers from 1 in the order in which the families come. More than a claim can tell apart are held for no thing
    // that another could be.
    ConceptId family_named(Node family) {
        const auto found = std::find(families_.begin(), families_.end(), family.text());
        const auto at = static_cast<std::size_t>(found - families_.begin());
        if (at == families_.size()) families_.emplace_back(family.text());
        return static_cast<ConceptId>(std::min(at + 1, std::size_t{kOneOfSeveral}));
    }

    // The number of the thing that the nouns of an entry name; kOneOfSeveral: any of several; 0: the part as a whole.
    ConceptId thing_of(const Document& document, Node node) {
        const Node family = node.find("family");
        const Node several = node.find("several");
        const bool is_several = several.exists() && read_yes_no(document, several, faults_) == true;
        if (family.exists() && is_several) {
            faults_.error(document, several, "family-of-several",
                          "the nouns of a `family` name one thing, not any of several",
                          "leave out one of `family` and `several`");
        }
        if (is_several) return kOneOfSeveral;
        return family.exists() ? family_named(family) : ConceptId{0};
    }

    void load_part_words(const Document& document, Node node) {
        if (!check_keys(document, node,
                        {"part", "family", "several", "nouns", "main_nouns", "strap_nouns", "labels", "main_labels",
                         "before", "after"},
                        faults_))
            return;
        const auto part = read_part(document, node.find("part"));
        if (!part) return;
        Sense sense;
        sense.value = static_cast<std::uint8_t>(*part);
        sense.role = Role::part;
        sense.concept_id = thing_of(document, node);
        add_terms(document, node.find("nouns"), sense, true);
        sense.condition = Condition::on_strap;
        add_terms(document, node.find("strap_nouns"), sense, true);
        sense.condition = Condition::as_label;
        add_terms(document, node.find("labels"), sense, true);
        sense.main_elsewhere = true;
        add_terms(document, node.find("main_labels"), sense, true);
        sense.condition = Condition::always;
        add_terms(document, node.find("main_nouns"), sense, true);
        sense.main_elsewhere = false;
        sense.role = Role::part_before;
        add_terms(document, node.find("before"), sense, false);
        sense.role = Role::part_after;
        add_terms(document, node.find("after"), sense, false);
    }

    void load_product_words(const Document& document, Node node) {
        if (!check_keys(document, node, {"category", "nouns", "homonyms"}, faults_)) return;
        const Node name = node.find("category");
        Sense sense;
        sense.role = Role::product;
        sense.value = category_named(name.text());
        if (sense.value == 0 && name.text() != "any") {
            report_unknown_category(document, name, name.text());
            return;
        }
        add_terms(document, node.find("nouns"), sense, true);
        sense.homonym = true;
        add_terms(document, node.find("homonyms"), sense, true);
    }

    void load_place_words(const Document& document, Node node) {
        if (!check_keys(document, node, {"place", "wording", "within", "names", "adjectives"}, faults_)) return;
        Sense sense;
        sense.concept_id = vocabulary_.concepts.find(node.find("place").text());
        if (sense.concept_id == 0) return;  // reported when it was added
        sense.role = Role::place_name;
        add_terms(document, node.find("names"), sense, true);
        sense.role = Role::place_adjective;
        add_terms(document, node.find("adjectives"), sense, true);
    }

    void load_grammar_words(const Document& document, Node node) {
        if (!check_keys(document, node, {"grammar", "words"}, faults_)) return;
        const Node name = node.find("grammar");
        const auto role = role_named(name.text());
        if (!role) {
            faults_.error(document, name, "unknown-role", fmt::format("there is no word class '{}'", name.text()),
                          "rules/README.md lists the word classes");
            return;
        }
        Sense sense;
        sense.role = *role;
        add_terms(document, node.find("words"), sense, *role == Role::accessory || *role == Role::thing);
    }

    void load_unit_words(const Document& document, Node node) {
        if (!check_keys(document, node, {"unit", "words"}, faults_)) return;
        const Node name = node.find("unit");
        for (int u = 0; u <= static_cast<int>(Unit::fill_power); ++u) {
            if (name_of(static_cast<Unit>(u)) != name.text()) continue;
            Sense sense;
            sense.role = Role::unit;
            sense.value = static_cast<std::uint8_t>(u);
            add_terms(document, node.find("words"), sense, false);
            return;
        }
        faults_.error(document, name, "unknown-unit", fmt::format("there is no unit '{}'", name.text()));
    }

    void load_spelling(const Document& document, Node node) {
        const Node what = node.find("spelling");
        if (what.text() == "pairs") {
            if (!check_keys(document, node, {"spelling", "pairs"}, faults_)) return;
            for (Node pair : node.find("pairs")) {
                const auto words = read_words(document, pair, faults_);
                if (words.size() != 2 || words[0].size() < 3 || words[1].size() < 3) {
                    faults_.error(document, pair, "wrong-type",
                                  "a spelling pair has two words of three letters or more");
                    continue;
                }
                terms_.pairs().add(words[0], words[1]);
            }
        } else if (what.text() == "not-misspelt") {
            if (!check_keys(document, node, {"spelling", "words"}, faults_)) return;
            for (std::string_view word : read_words(document, node.find("words"), faults_)) {
                vocabulary_.misspellings.protect(word);
            }
        } else {
            faults_.error(document, what, "unknown-role", fmt::format("there is no spelling list '{}'", what.text()),
                          "one of pairs, not-misspelt");
        }
    }

    void add_terms(const Document& document, Node list, const Sense& sense, bool inflects) {
        if (!list.exists()) return;
        if (list.is_scalar()) {
            add_term(document, list, sense, inflects);
            return;
        }
        for (Node node : list) add_term(document, node, sense, inflects);
    }

    void add_term(const Document& document, Node node, const Sense& sense, bool inflects) {
        if (!node.is_scalar()) {
            faults_.error(document, node, "wrong-type", "a term is a text");
            return;
        }
        text::tokenize(node.text(), tokens_);
        for (const text::Token& token : tokens_.list) {
            if (token.kind > text::TokenKind::number) {
                faults_.error(document, node, "empty-term", fmt::format("the term '{}' holds a mark", node.text()),
                              "a term is made of words and digits; hyphens and spaces are equal");
                return;
            }
        }
        if (tokens_.list.empty()) {
            faults_.error(document, node, "empty-term", "a term without a word");
            return;
        }
        terms_.add(tokens_, sense, inflects);
    }

    Vocabulary& vocabulary_;
    Faults& faults_;
    text::Tokens tokens_;
    TermForms terms_;
    std::vector<std::string> families_;
};

}  // namespace

void load_vocabulary(std::span<const Document> documents, Vocabulary& vocabulary, Faults& faults) {
    Loader(vocabulary, faults).load(documents);
}

}  // namespace grainside::vocabulary
