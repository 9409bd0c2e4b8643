#include <fmt/format.h>

#include <algorithm>

#include "rules/book_data.h"

namespace grainside::rules {

using document::Document;
using document::Faults;
using document::Node;

void load_sources(BookData& book, Faults& faults) {
    for (const Document& document : book.documents) {
        if (document.file() != "sources.yaml") continue;
        for (Node node : document.root()) {
            if (!check_keys(document, node, {"source", "cite", "says", "how", "facts"}, faults)) continue;
            SourceInfo source;
            source.id = node.find("source").text();
            source.cite = node.find("cite").text();
            source.says = node.find("says").text();
            if (source.id.empty() || source.cite.empty() || source.says.empty()) {
                faults.error(document, node, "missing-key", "a source needs `source`, `cite` and `says`");
                continue;
            }
            const Node how = node.find("how");
            if (how.text() != "seen" && how.text() != "memory" && how.text() != "practice") {
                faults.error(
                    document, how.exists() ? how : node, "wrong-type", "`how` is seen, memory or practice",
                    "memory where nobody could see the text; practice for a fact of the trade without a source");
            }
            source.from_memory = how.text() == "memory";
            source.practice = how.text() == "practice";
            const bool known = std::any_of(book.sources.begin(), book.sources.end(),
                                           [&](const SourceInfo& other) { return other.id == source.id; });
            if (known) {
                faults.error(document, node.find("source"), "duplicate-source",
                             fmt::format("source '{}' is defined twice", source.id));
            }
            book.sources.push_back(std::move(source));
        }
    }
}

namespace {

bool has_market(const BookData& book, std::string_view name) {
    return std::any_of(book.markets.begin(), book.markets.end(),
                       [name](const Market& market) { return market.name == name; });
}

// A market may lie within one that a later line names.
void check_larger_markets(const Document& document, const BookData& book, Faults& faults) {
    for (Node node : document.root()) {
        const Node within = node.find("within");
        if (!within.exists() || !node.find("market").exists()) continue;
        for (std::string_view larger : read_words(document, within, faults)) {
            if (has_market(book, larger)) continue;
            faults.error(document, within, "unknown-market", fmt::format("there is no market '{}'", larger));
        }
    }
}

}  // namespace

void load_markets(BookData& book, Faults& faults) {
    for (const Document& document : book.documents) {
        if (document.file() != "markets.yaml") continue;
        for (Node node : document.root()) {
            if (!check_keys(document, node, {"market", "within", "name"}, faults)) continue;
            Market market;
            market.name = node.find("market").text();
            market.title = node.find("name").text();
            if (market.name.empty()) {
                faults.error(document, node, "missing-key", "a market needs `market`");
                continue;
            }
            if (has_market(book, market.name)) {
                faults.error(document, node.find("market"), "duplicate-market",
                             fmt::format("market '{}' is there twice", market.name));
                continue;
            }
            if (const Node within = node.find("within"); within.exists()) {
                for (std::string_view larger : read_words(document, within, faults)) market.within.emplace_back(larger);
            }
            book.markets.push_back(std::move(market));
        }
        check_larger_markets(document, book, faults);
    }
}

}  // namespace grainside::rules
