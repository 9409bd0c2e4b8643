#include "rules/references.h"

#include <fmt/format.h>

#include <algorithm>

namespace grainside::rules {

using document::Document;
using document::Faults;
using document::Node;

namespace {

// The place of the member that says so: a list's fault is not the bracket's.
Node member_with(Node words, std::string_view text) {
    for (const Node member : words) {
        if (member.text() == text) return member;
    }
    return words;
}

}  // namespace

std::vector<std::string> read_markets(const Document& document, Node node, std::span<const Market> known,
                                      Faults& faults) {
    std::vector<std::string_view> names;
    for (const Market& market : known) names.push_back(market.name);
    std::vector<std::string> markets;
    for (std::string_view name : read_words(document, node, faults)) {
        if (std::find(names.begin(), names.end(), name) == names.end()) {
            faults.error(document, member_with(node, name), "unknown-market",
                         fmt::format("there is no market '{}'", name), faults.suggestion(name, names));
        }
        markets.emplace_back(name);
    }
    return markets;
}

std::vector<std::uint32_t> read_sources(const Document& document, Node node, std::span<const SourceInfo> known,
                                        Faults& faults) {
    std::vector<std::uint32_t> sources;
    for (std::string_view name : read_words(document, node, faults)) {
        const auto found =
            std::find_if(known.begin(), known.end(), [name](const SourceInfo& source) { return source.id == name; });
        if (found == known.end()) {
            std::vector<std::string_view> names;
            for (const SourceInfo& source : known) names.push_back(source.id);
            faults.error(document, member_with(node, name), "unknown-source",
                         fmt::format("there is no source '{}'", name), faults.suggestion(name, names));
        } else {
            sources.push_back(static_cast<std::uint32_t>(found - known.begin()));
        }
    }
    return sources;
}

InForce read_in_force(const Document& document, Node node, Faults& faults) {
    InForce in_force;
    if (!check_keys(document, node, {"from", "until"}, faults)) return in_force;
    if (const Node from = node.find("from"); from.exists() && read_date(document, from, faults))
        in_force.from = from.text();
    if (const Node until = node.find("until"); until.exists() && read_date(document, until, faults))
        in_force.until = until.text();
    if (!in_force.from.empty() && !in_force.until.empty() && in_force.until < in_force.from) {
        faults.error(document, node, "bad-date", "`until` is before `from`");
    }
    return in_force;
}

std::vector<std::string_view> reach_of(std::span<const std::string> asked, std::span<const Market> known) {
    std::vector<std::string_view> reach(asked.begin(), asked.end());
    for (const Market& market : known) {
        if (std::find(asked.begin(), asked.end(), market.name) == asked.end()) continue;
        reach.insert(reach.end(), market.within.begin(), market.within.end());
    }
    return reach;
}

bool holds_in(std::span<const std::string> markets, std::span<const std::string_view> reach) noexcept {
    return markets.empty() || std::any_of(markets.begin(), markets.end(), [&](const std::string& market) {
               return std::find(reach.begin(), reach.end(), market) != reach.end();
           });
}

}  // namespace grainside::rules
