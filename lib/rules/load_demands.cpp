#include "rules/load_demands.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "rules/references.h"

namespace grainside::rules {

using document::Document;
using document::Faults;
using document::Node;

namespace {

class DemandReader {
public:
    DemandReader(BookData& book, const Document& document, Faults& faults)
        : book_(book), document_(document), faults_(faults) {}

    void read() {
        if (!document_.root().exists()) return;
        if (!document_.root().is_sequence()) {
            faults_.error(document_, document_.root(), "wrong-type", "this file is a list of demands",
                          "begin each with '- supports: ...'");
            return;
        }
        for (Node node : document_.root()) read_one(node);
    }

private:
    void read_one(Node node) {
        if (!check_keys(document_, node, {"supports", "of", "standard", "number", "sources"}, faults_)) return;
        Demand demand;
        const std::string supports = text(node, "supports", true);
        demand.of = text(node, "of", false);
        demand.standard = text(node, "standard", false);
        demand.number = text(node, "number", true);
        if (!supports.empty()) {
            demand.supports = book_.vocabulary.concepts.require(document_, node.find("supports"), faults_);
        }
        if (const Node sources = node.find("sources"); sources.exists()) {
            demand.sources = read_sources(document_, sources, book_.sources, faults_);
        } else {
            faults_.error(document_, node, "missing-key", "`sources` must stand here",
                          "cite a source of sources.yaml, or common-practice");
        }
        const auto same = [&](const Demand& other) {
            return other.supports == demand.supports && other.of == demand.of && other.standard == demand.standard;
        };
        if (demand.supports == 0) return;
        if (std::any_of(book_.demands.begin(), book_.demands.end(), same)) {
            faults_.error(
                document_, node, "duplicate-demand",
                fmt::format("{} is demanded for {} already",
                            demand.standard.empty() ? "proof without a standard" : fmt::format("'{}'", demand.standard),
                            supports),
                "say in `of` for which goods each one is");
            return;
        }
        book_.demands.push_back(std::move(demand));
    }

    std::string text(Node entry, std::string_view key, bool must_stand) {
        const Node node = entry.find(key);
        if (node.is_sequence() || node.is_mapping()) {
            faults_.error(document_, node, "wrong-type", fmt::format("`{}` is a text", key));
        } else if (node.text().empty() && (must_stand || node.exists())) {
            faults_.error(document_, node.exists() ? node : entry, "missing-key",
                          node.exists() ? fmt::format("`{}` is empty", key) : fmt::format("`{}` must stand here", key));
        }
        return std::string(node.text());
    }

    BookData& book_;
    const Document& document_;
    Faults& faults_;
};

// Each concept's own demands, else those of the nearest ancestor that has some. Of ancestors equally near the one that
// is reached by the parents written first counts.
void spread_over_concepts(BookData& book) {
    const auto& tree = book.vocabulary.concepts;
    std::stable_sort(book.demands.begin(), book.demands.end(),
                     [](const Demand& a, const Demand& b) { return a.supports < b.supports; });
    book.demands_of.assign(tree.size(), {});
    for (std::uint32_t i = 0; i < book.demands.size(); ++i) {
        BookData::DemandRange& range = book.demands_of[book.demands[i].supports];
        if (range.count++ == 0) range.first = i;
    }
    const std::vector<BookData::DemandRange> own = book.demands_of;
    std::vector<ConceptId> level, above;
    for (std::size_t id = 1; id < tree.size(); ++id) {
        vocabulary::ConceptSet seen(tree.size());
        level.assign(1, static_cast<ConceptId>(id));
        while (!level.empty() && book.demands_of[id].count == 0) {
            above.clear();
            for (const ConceptId one : level) {
                for (const ConceptId parent : tree[one].parents) {
                    if (seen.contains(parent)) continue;
                    seen.insert(parent);
                    above.push_back(parent);
                    if (book.demands_of[id].count == 0) book.demands_of[id] = own[parent];
                }
            }
            level.swap(above);
        }
    }
}

}  // namespace

void load_demands(BookData& book, Faults& faults) {
    for (const Document& document : book.documents) {
        if (document.file() == "demands.yaml") DemandReader(book, document, faults).read();
    }
    if (!book.demands.empty()) spread_over_concepts(book);
}

}  // namespace grainside::rules
