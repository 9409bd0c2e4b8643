// The concepts and their is-a relation.
#ifndef GRAINSIDE_VOCABULARY_CONCEPT_TREE_H
#define GRAINSIDE_VOCABULARY_CONCEPT_TREE_H

#include <algorithm>
#include <bit>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document/document.h"
#include "document/faults.h"
#include "grainside/claim.h"

namespace grainside::vocabulary {

// A set of concepts as bits, one for each id.
class ConceptSet {
public:
    ConceptSet() = default;
    explicit ConceptSet(std::size_t concept_count) : words_((concept_count + 63) / 64) {}
    // Every concept of a tree of `concept_count` entries; entry 0 is none.
    static ConceptSet of_all(std::size_t concept_count) {
        ConceptSet set(concept_count);
        std::fill(set.words_.begin(), set.words_.end(), ~std::uint64_t{0});
        if (concept_count % 64 != 0) set.words_.back() = (std::uint64_t{1} << concept_count % 64) - 1;
        if (!set.words_.empty()) set.words_.front() &= ~std::uint64_t{1};
        return set;
    }
    void insert(ConceptId id) { words_[id / 64] |= std::uint64_t{1} << (id % 64); }
    bool contains(ConceptId id) const noexcept {
        return id / 64U < words_.size() && (words_[id / 64U] >> (id % 64U) & 1) != 0;
    }
    void insert_all(const ConceptSet& other) {
        for (std::size_t i = 0; i < words_.size(); ++i) words_[i] |= other.words_[i];
    }
    void remove_all(const ConceptSet& other) {
        for (std::size_t i = 0; i < std::min(words_.size(), other.words_.size()); ++i) words_[i] &= ~other.words_[i];
    }
    bool empty() const noexcept;
    // Calls `visit` with each id, the smallest first.
    template <typename Visit>
    void for_each(Visit visit) const {
        for (std::size_t i = 0; i < words_.size(); ++i) {
            for (std::uint64_t rest = words_[i]; rest != 0; rest &= rest - 1) {
                visit(static_cast<ConceptId>(i * 64 + static_cast<std::size_t>(std::countr_zero(rest))));
            }
        }
    }

    bool intersects(const ConceptSet& other) const noexcept {
        std::uint64_t common = 0;
        for (std::size_t i = 0; i < std::min(words_.size(), other.words_.size()); ++i)
            common |= words_[i] & other.words_[i];
        return common != 0;
    }
    // Takes every concept out and keeps the room.
    void clear() noexcept { std::fill(words_.begin(), words_.end(), 0); }
    // 64 concepts a word, the lowest id in the lowest bit of the first.
    const std::vector<std::uint64_t>& words() const noexcept { return words_; }

private:
    std::vector<std::uint64_t> words_;
};

// Immutable once loaded. Id 0 is no concept.
class ConceptTree {
public:
    struct Entry {
        std::string name;         // the permanent id
        std::string wording;      // how to write it in a text
        std::string before_noun;  // and right before a noun: 'gold-plated' for 'gold plating'; empty = the same
        Kind kind = Kind::material;
        std::optional<Part>
            part;  // of a claim that nothing gives a part to; inherited from the first parent that has one
        std::vector<ConceptId> parents;
        ConceptSet ancestors;    // reflexive
        ConceptSet descendants;  // reflexive
    };

    // Reads the entries of concepts documents, then those that `add` brought, and closes the relation. Faults:
    // "unknown-key", "missing-key", "wrong-type", "duplicate-concept", "unknown-concept", "unknown-kind",
    // "unknown-part", "cycle", "too-many-concepts".
    void load(const document::Document& document, document::Faults& faults);
    // Adds one concept that another file defines (a place). Gives its id, or 0 with a fault.
    ConceptId add(const document::Document& document, document::Node place, std::string_view name,
                  std::string_view parent, std::string wording, document::Faults& faults);
    // Resolves parents, inherits kinds and closes is-a. Call once, after all were added.
    void close(document::Faults& faults);

    ConceptId find(std::string_view name) const noexcept;
    // Reports "unknown-concept" with a suggestion and gives 0 where there is none of that name.
    ConceptId require(const document::Document& document, document::Node node, document::Faults& faults) const;
    const Entry& operator[](ConceptId id) const noexcept { return entries_[id]; }
    std::size_t size() const noexcept { return entries_.size(); }  // counts the empty entry 0
    // Asked for every word, so both are read from tables of their own. REQUIRES: close() was called.
    bool is_a(ConceptId id, ConceptId ancestor) const noexcept {
        return (ancestor_bits_[id * row_words_ + ancestor / 64U] >> (ancestor % 64U) & 1) != 0;
    }
    Kind kind(ConceptId id) const noexcept { return kinds_[id]; }
    // One is the other's ancestor: 'leather' and 'calf leather' can both be true of one thing.
    bool related(ConceptId a, ConceptId b) const noexcept { return is_a(a, b) || is_a(b, a); }

private:
    struct Pending {
        const document::Document* document = nullptr;
        document::Node node;  // where parents stand
        std::vector<std::string> parents;
        bool has_kind = false;
    };
    ConceptId insert(const document::Document& document, document::Node place, std::string_view name,
                     document::Faults& faults);

    std::vector<Entry> entries_{Entry{}};
    std::vector<Pending> pending_{Pending{}};
    std::map<std::string, ConceptId, std::less<>> by_name_;
    std::vector<std::uint64_t> ancestor_bits_;  // a row for each concept: ConceptSet::words of its ancestors
    std::size_t row_words_ = 0;
    std::vector<Kind> kinds_;
    bool closed_ = false;
};

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_CONCEPT_TREE_H
