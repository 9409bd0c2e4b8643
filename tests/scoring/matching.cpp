#include "matching.h"

#include <algorithm>
#include <tuple>

namespace grainside::scoring {

namespace {

struct Edge {
    std::uint32_t shared = 0;
    std::uint32_t outside = 0;
    Pair pair;
};

std::vector<std::size_t> without_partner(const std::vector<bool>& taken) {
    std::vector<std::size_t> free;
    for (std::size_t i = 0; i < taken.size(); ++i) {
        if (!taken[i]) free.push_back(i);
    }
    return free;
}

}  // namespace

std::uint32_t overlap(const Span& a, const Span& b) noexcept {
    if (a.field != b.field) return 0;
    const std::uint32_t start = std::max(a.start, b.start);
    const std::uint32_t end = std::min(a.end, b.end);
    return end > start ? end - start : 0;
}

Matching match(std::span<const Candidate> labels, std::span<const Candidate> found) {
    std::vector<Edge> edges;
    for (std::size_t l = 0; l < labels.size(); ++l) {
        for (std::size_t f = 0; f < found.size(); ++f) {
            const Span& label = labels[l].span;
            const Span& other = found[f].span;
            const std::uint32_t shared = labels[l].key == found[f].key ? overlap(label, other) : 0;
            if (shared == 0) continue;
            const std::uint32_t outside = (label.end - label.start) + (other.end - other.start) - 2 * shared;
            edges.push_back({shared, outside, {l, f}});
        }
    }
    std::sort(edges.begin(), edges.end(), [](const Edge& a, const Edge& b) {
        return std::tuple(b.shared, a.outside, a.pair.label, a.pair.found) <
               std::tuple(a.shared, b.outside, b.pair.label, b.pair.found);
    });

    Matching result;
    std::vector<bool> label_taken(labels.size());
    std::vector<bool> found_taken(found.size());
    for (const Edge& edge : edges) {
        if (label_taken[edge.pair.label] || found_taken[edge.pair.found]) continue;
        label_taken[edge.pair.label] = true;
        found_taken[edge.pair.found] = true;
        result.pairs.push_back(edge.pair);
    }
    std::sort(result.pairs.begin(), result.pairs.end(), [](const Pair& a, const Pair& b) { return a.label < b.label; });
    result.missed = without_partner(label_taken);
    result.surplus = without_partner(found_taken);
    return result;
}

}  // namespace grainside::scoring
