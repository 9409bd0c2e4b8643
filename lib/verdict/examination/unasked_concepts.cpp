#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "verdict/examination/condition_keys.h"
#include "verdict/examination/entry_places.h"
#include "verdict/examination/findings.h"
#include "verdict/examination/spoken_concepts.h"

namespace grainside::verdict {

namespace {

using document::Document;
using document::Node;
using vocabulary::ConceptSet;

constexpr std::size_t kMostNamed = 12;  // of a group

// What is asked about somewhere in the book, with all that lies below it.
class AskedConcepts {
public:
    explicit AskedConcepts(const rules::BookData& book)
        : tree_(book.vocabulary.concepts), set_(book.vocabulary.concepts.size()) {
        for (const Document& document : book.documents) {
            const bool of_words = document.file().starts_with("vocabulary/") || document.file() == "concepts.yaml" ||
                                  document.file() == "parts.yaml" || document.file() == "sources.yaml";
            if (!of_words) look(document.root());
        }
        for (const rules::CompiledRule& rule : book.compiled) {
            for (const rules::ClaimCondition& condition : rule.when) add_by_kind(condition);
        }
    }

    bool contains(ConceptId id) const noexcept { return set_.contains(id); }

private:
    // Conditions, frames, limits and costs name concepts under many keys. A text of another meaning that happens to be
    // the name of a concept hides a remark and makes none. Proof texts and prose are sentences.
    void look(Node node) {
        if (node.key() == "proof") return;
        if (node.is_scalar()) {
            if (const ConceptId id = tree_.find(node.text()); id != 0) set_.insert_all(tree_[id].descendants);
        }
        for (const Node child : node) look(child);
    }

    // A rule on praise asks for the kind alone.
    void add_by_kind(const rules::ClaimCondition& condition) {
        constexpr std::uint32_t kEvery = (1U << kKindCount) - 1;
        if (condition.kinds == kEvery || !says_anything(condition, tree_.size())) return;
        for (std::size_t id = 1; id < tree_.size(); ++id) {
            const auto one = static_cast<ConceptId>(id);
            if ((condition.kinds >> static_cast<unsigned>(tree_[one].kind) & 1U) != 0) set_.insert(one);
        }
    }

    const vocabulary::ConceptTree& tree_;
    ConceptSet set_;
};

// The ancestor without parents by which concepts are grouped; the first of several ways up.
ConceptId top_of(const vocabulary::ConceptTree& tree, ConceptId id) {
    while (!tree[id].parents.empty()) id = tree[id].parents.front();
    return id;
}

}  // namespace

void find_unasked_concepts(const rules::BookData& book, Remarks& remarks) {
    const vocabulary::ConceptTree& tree = book.vocabulary.concepts;
    const AskedConcepts asked(book);
    std::map<ConceptId, std::vector<ConceptId>> groups;
    concepts_with_terms(book).for_each([&](ConceptId id) {
        if (!asked.contains(id)) groups[top_of(tree, id)].push_back(id);
    });
    const EntryPlaces places(book.documents, "concept");
    for (const auto& [top, concepts] : groups) {
        std::string names;
        for (std::size_t i = 0; i < std::min(concepts.size(), kMostNamed); ++i) {
            names += (i == 0 ? "" : ", ") + tree[concepts[i]].name;
        }
        if (concepts.size() > kMostNamed) names += fmt::format(" and {} more", concepts.size() - kMostNamed);
        const EntryPlace place = places.of(tree[concepts.front()].name);
        remarks.add(
            Issue::Severity::note, "unasked-concepts", place.file, place.line,
            fmt::format("words stand for {} of the group '{}' that no rule speaks of or asks about: {}",
                        concepts.size() == 1 ? "a concept" : fmt::format("{} concepts", concepts.size()),
                        tree[top].name, names),
            "write a rule or limit that asks about them, put them below a concept that one asks about, or leave "
            "them as plain facts of the product");
    }
}

}  // namespace grainside::verdict
