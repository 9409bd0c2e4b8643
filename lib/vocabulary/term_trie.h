// Terms as paths of words.
#ifndef GRAINSIDE_VOCABULARY_TERM_TRIE_H
#define GRAINSIDE_VOCABULARY_TERM_TRIE_H

#include <cstdint>
#include <span>
#include <vector>

#include "vocabulary/role_set.h"
#include "vocabulary/sense.h"
#include "vocabulary/word_table.h"

namespace grainside::vocabulary {

// Node 0 is the root. One step is one look into an open-addressed table, however many terms there are.
class TermTrie {
public:
    using NodeId = std::uint32_t;

    // A node and what a walk asks of it, so that most steps look at nothing else.
    class Place {
    public:
        Place() = default;
        explicit Place(NodeId node) : bits_(node << 2) {}
        Place(NodeId node, bool ends_term, bool goes_on)
            : bits_(node << 2 | (ends_term ? kEndsTerm : 0U) | (goes_on ? kGoesOn : 0U)) {}

        bool exists() const noexcept { return bits_ != 0; }
        NodeId node() const noexcept { return bits_ >> 2; }
        bool ends_term() const noexcept { return (bits_ & kEndsTerm) != 0; }
        bool goes_on() const noexcept { return (bits_ & kGoesOn) != 0; }  // some term has more words

    private:
        static constexpr std::uint32_t kEndsTerm = 1;
        static constexpr std::uint32_t kGoesOn = 2;
        std::uint32_t bits_ = 0;
    };

    // Makes room for about so many nodes, a term each; more may come.
    void reserve(std::size_t nodes);
    // Adds a sense to the end of a path; the order of adding is kept.
    void add(std::span<const WordId> path, const Sense& sense);
    // Whether a term ends where `path` leads. Only before freeze().
    bool has_term(std::span<const WordId> path) const noexcept;
    // Lays the senses out side by side. Call once, after the last add().
    void freeze();

    // Nowhere if no term begins with `word`: an array, since most words are asked only this. Only after freeze().
    Place first(WordId word) const noexcept { return word < first_count_ ? firsts_[word] : Place{}; }
    // False where no term begins with these two words, which spares most steps: 'of' and 'with' begin and go on terms,
    // but seldom these. REQUIRES: first(first_word).exists(). Only after freeze().
    bool may_begin_with(WordId first_word, WordId second_word) const noexcept {
        return (seconds_[first_word] >> (second_word & 63) & 1) != 0;
    }
    // Nowhere if no term goes on with `word`. Before freeze() the place tells its node only.
    Place step(NodeId node, WordId word) const noexcept {
        const Edge* const edges = edges_.data();
        for (std::size_t at = hash(node, word) & mask_;; at = (at + 1) & mask_) {
            const Edge& edge = edges[at];
            if (edge.from == node && edge.word == word) return edge.place;
            if (!edge.place.exists()) return {};
        }
    }
    // The senses of the term that ends at `node`; empty where none does. Only after freeze().
    std::span<const Sense> senses(NodeId node) const noexcept {
        return {senses_.data() + ends_[node].first, ends_[node].count};
    }
    // The word classes of those senses. Only after freeze().
    RoleSet roles(NodeId node) const noexcept { return ends_[node].roles; }
    std::size_t terms() const noexcept { return terms_; }

private:
    struct Edge {
        NodeId from = 0;
        WordId word = 0;
        Place place;  // nowhere = an empty slot
    };
    struct End {
        std::uint32_t first = 0;
        std::uint32_t count = 0;
        RoleSet roles;
    };
    static std::size_t hash(NodeId from, WordId word) noexcept {
        const std::uint64_t key = (std::uint64_t{from} << 32 | word) * 0x9e3779b97f4a7c15ULL;
        return static_cast<std::size_t>(key >> 32 ^ key >> 17);
    }
    NodeId make(NodeId node, WordId word);
    void rehash(std::size_t slots);

    std::vector<Edge> edges_ = std::vector<Edge>(4096);
    std::size_t mask_ = 4095;
    std::size_t used_ = 0;
    std::size_t terms_ = 0;
    // Until freeze(): each node's senses as a chain through `added_`, in the order of adding. 0 ends a chain.
    struct Added {
        Sense sense;
        std::uint32_t next = 0;
    };
    std::vector<Added> added_{Added{}};
    struct Chain {
        std::uint32_t first = 0;
        std::uint32_t last = 0;
        bool goes_on = false;  // an edge leads from the node
    };
    std::vector<Chain> chains_{Chain{}};  // by node
    std::vector<End> ends_;
    std::vector<Sense> senses_;
    std::vector<Place> firsts_;  // by word
    std::size_t first_count_ = 0;
    std::vector<std::uint64_t> seconds_;  // by first word: the lowest six bits of each word that goes on, as bits
};

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_TERM_TRIE_H
