#include "vocabulary/term_trie.h"

namespace grainside::vocabulary {

TermTrie::NodeId TermTrie::make(NodeId node, WordId word) {
    if (const NodeId known = step(node, word); known != 0) return known;
    if ((used_ + 1) * 2 > edges_.size()) grow();
    const std::uint64_t key = std::uint64_t{node} << 32 | word;
    std::size_t at = hash(key) & mask_;
    while (edges_[at].node != 0) at = (at + 1) & mask_;
    edges_[at] = {key, static_cast<NodeId>(pending_.size())};
    ++used_;
    pending_.emplace_back();
    return edges_[at].node;
}

void TermTrie::grow() {
    std::vector<Edge> old(edges_.size() * 2);
    old.swap(edges_);
    mask_ = edges_.size() - 1;
    for (const Edge& edge : old) {
        if (edge.node == 0) continue;
        std::size_t at = hash(edge.key) & mask_;
        while (edges_[at].node != 0) at = (at + 1) & mask_;
        edges_[at] = edge;
    }
}

void TermTrie::add(std::span<const WordId> path, const Sense& sense) {
    NodeId node = 0;
    for (WordId word : path) node = make(node, word);
    std::vector<Sense>& senses = pending_[node];
    for (const Sense& known : senses) {
        if (known.role == sense.role && known.condition == sense.condition && known.value == sense.value &&
            known.concept_id == sense.concept_id && known.called == sense.called) {
            return;  // two spellings of one term
        }
    }
    if (senses.empty()) ++terms_;
    senses.push_back(sense);
}

bool TermTrie::has_term(std::span<const WordId> path) const noexcept {
    NodeId node = 0;
    for (WordId word : path) {
        node = step(node, word);
        if (node == 0) return false;
    }
    return !pending_[node].empty();
}

void TermTrie::freeze() {
    ends_.resize(pending_.size());
    for (std::size_t node = 0; node < pending_.size(); ++node) {
        ends_[node] = {static_cast<std::uint32_t>(senses_.size()), static_cast<std::uint32_t>(pending_[node].size())};
        senses_.insert(senses_.end(), pending_[node].begin(), pending_[node].end());
    }
    for (const Edge& edge : edges_) {
        const auto word = static_cast<WordId>(edge.key);
        if (edge.node == 0 || edge.key >> 32 != 0) continue;
        if (firsts_.size() <= word) firsts_.resize(word + 1);
        firsts_[word] = edge.node;
    }
    pending_.clear();
    pending_.shrink_to_fit();
}

}  // namespace grainside::vocabulary
