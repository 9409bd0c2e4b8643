#include "vocabulary/term_trie.h"

#include <bit>

namespace grainside::vocabulary {

void TermTrie::reserve(std::size_t nodes) {
    chains_.reserve(nodes);
    added_.reserve(nodes);
    if (const std::size_t slots = std::bit_ceil(2 * nodes); slots > edges_.size()) rehash(slots);
}

TermTrie::NodeId TermTrie::make(NodeId node, WordId word) {
    if (const Place known = step(node, word); known.exists()) return known.node();
    if ((used_ + 1) * 2 > edges_.size()) rehash(edges_.size() * 2);
    std::size_t at = hash(node, word) & mask_;
    while (edges_[at].place.exists()) at = (at + 1) & mask_;
    const auto made = static_cast<NodeId>(chains_.size());
    edges_[at] = {node, word, Place(made)};
    ++used_;
    chains_[node].goes_on = true;
    chains_.emplace_back();
    return made;
}

void TermTrie::rehash(std::size_t slots) {
    std::vector<Edge> old(slots);
    old.swap(edges_);
    mask_ = edges_.size() - 1;
    for (const Edge& edge : old) {
        if (!edge.place.exists()) continue;
        std::size_t at = hash(edge.from, edge.word) & mask_;
        while (edges_[at].place.exists()) at = (at + 1) & mask_;
        edges_[at] = edge;
    }
}

void TermTrie::add(std::span<const WordId> path, const Sense& sense) {
    NodeId node = 0;
    for (WordId word : path) node = make(node, word);
    Chain& chain = chains_[node];
    for (std::uint32_t at = chain.first; at != 0; at = added_[at].next) {
        const Sense& known = added_[at].sense;
        if (known.role == sense.role && known.condition == sense.condition && known.value == sense.value &&
            known.concept_id == sense.concept_id && known.called == sense.called &&
            known.main_elsewhere == sense.main_elsewhere) {
            return;  // two spellings of one term
        }
    }
    const auto link = static_cast<std::uint32_t>(added_.size());
    added_.push_back({sense, 0});
    if (chain.first == 0) {
        ++terms_;
        chain.first = link;
    } else {
        added_[chain.last].next = link;
    }
    chain.last = link;
}

bool TermTrie::has_term(std::span<const WordId> path) const noexcept {
    NodeId node = 0;
    for (WordId word : path) {
        node = step(node, word).node();
        if (node == 0) return false;
    }
    return chains_[node].first != 0;
}

void TermTrie::freeze() {
    ends_.resize(chains_.size());
    senses_.reserve(added_.size());
    for (std::size_t node = 0; node < chains_.size(); ++node) {
        ends_[node].first = static_cast<std::uint32_t>(senses_.size());
        for (std::uint32_t at = chains_[node].first; at != 0; at = added_[at].next) {
            senses_.push_back(added_[at].sense);
            ends_[node].roles.insert(added_[at].sense.role);
        }
        ends_[node].count = static_cast<std::uint32_t>(senses_.size()) - ends_[node].first;
    }
    std::vector<WordId> words(chains_.size());  // by node right below the root
    for (Edge& edge : edges_) {
        if (!edge.place.exists()) continue;
        const NodeId node = edge.place.node();
        edge.place = Place(node, ends_[node].count != 0, chains_[node].goes_on);
        if (edge.from != 0) continue;
        if (firsts_.size() <= edge.word) firsts_.resize(edge.word + 1);
        firsts_[edge.word] = edge.place;
        words[node] = edge.word;
    }
    first_count_ = firsts_.size();
    seconds_.resize(first_count_);
    for (const Edge& edge : edges_) {
        if (edge.from != 0 && words[edge.from] != 0) seconds_[words[edge.from]] |= std::uint64_t{1} << (edge.word & 63);
    }
    added_ = {};
    chains_ = {};
}

}  // namespace grainside::vocabulary
