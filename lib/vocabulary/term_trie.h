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

    // Makes room for about so many nodes, a term each; more may come.
    void reserve(std::size_t nodes);
    // Adds a sense to the end of a path; the order of adding is kept.
    void add(std::span<const WordId> path, const Sense& sense);
    // Whether a term ends where `path` leads. Only before freeze().
    bool has_term(std::span<const WordId> path) const noexcept;
    // Lays the senses out side by side. Call once, after the last add().
    void freeze();

    // 0 where no term begins with `word`: an array, since most words are asked only this. Only after freeze().
    NodeId first(WordId word) const noexcept { return word < firsts_.size() ? firsts_[word] : 0; }
    // 0 where no term goes on with `word`.
    NodeId step(NodeId node, WordId word) const noexcept {
        for (std::size_t at = hash(node, word) & mask_;; at = (at + 1) & mask_) {
            const Edge& edge = edges_[at];
            if (edge.from == node && edge.word == word) return edge.node;
            if (edge.node == 0) return 0;
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
        NodeId node = 0;  // 0 = an empty slot
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
    };
    std::vector<Chain> chains_{Chain{}};  // by node
    std::vector<End> ends_;
    std::vector<Sense> senses_;
    std::vector<NodeId> firsts_;  // by word
};

}  // namespace grainside::vocabulary

#endif  // GRAINSIDE_VOCABULARY_TERM_TRIE_H
