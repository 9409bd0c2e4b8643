#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "rules/book_data.h"
#include "rules/rule_reader.h"

namespace grainside::rules {

using document::Document;
using document::Faults;
using document::Node;

namespace {

// Rules of all files, in two rounds: first those that stand by themselves, then those that are `like` one of them. A
// rule stands in the book right before its model, the narrower market first, so that of two findings on one cause the
// one of the market speaks, and cites the law that holds there.
class RuleLoader {
public:
    RuleLoader(BookData& book, Faults& faults) : book_(book), faults_(faults) {}

    void load() {
        for (const Document& document : book_.documents) {
            const bool of_market = document.file().starts_with("markets/");
            if (!of_market && !document.file().starts_with("wording/")) continue;
            if (!document.root().exists()) continue;
            if (!document.root().is_sequence()) {
                faults_.error(document, document.root(), "wrong-type", "a rule file is a sequence of rules");
                continue;
            }
            const std::string market = of_market ? market_of(document) : std::string();
            for (Node node : document.root()) take(document, node, market);
        }
        for (const Pending& pending : pending_) take_like(pending);
        hand_over();
    }

private:
    struct Entry {
        std::size_t place;  // of the rule, or of its model
        bool is_model;      // comes behind what is like it
        bool is_wide;       // of a market that holds others: comes behind those of its parts
        ReadRule rule;
    };
    struct Pending {
        const Document* document;
        Node node;
        std::string market;
    };

    std::string market_of(const Document& document) {
        std::string name(document.stem());
        const bool known = std::any_of(book_.markets.begin(), book_.markets.end(),
                                       [&](const Market& market) { return market.name == name; });
        if (!known) {
            faults_.error(document, document.root(), "unknown-market", fmt::format("there is no market '{}'", name),
                          "the file is named for a market of markets.yaml");
        }
        return name;
    }

    void take(const Document& document, Node node, const std::string& market) {
        if (!check_keys(
                document, node,
                {"rule", "like", "group", "title", "grade", "markets", "in_force", "when", "unless", "beside",
                 "unless_beside", "over_list", "because", "say_instead", "remedy", "leave_out", "sources", "proof"},
                faults_)) {
            return;
        }
        if (node.find("like").exists()) {
            pending_.push_back({&document, node, market});
        } else {
            add(document, node, read_rule(document, node, book_, nullptr, market, faults_), entries_.size(), true);
        }
    }

    void take_like(const Pending& pending) {
        const Document& document = *pending.document;
        const Node like = pending.node.find("like");
        const auto found = by_id_.find(std::string(like.text()));
        if (found == by_id_.end() || !entries_[found->second].is_model) {
            std::vector<std::string_view> models;
            for (const Entry& entry : entries_) {
                if (entry.is_model) models.push_back(entry.rule.info.id);
            }
            faults_.error(document, like, "unknown-rule",
                          fmt::format("there is no rule '{}' with a condition of its own", like.text()),
                          faults_.suggestion(like.text(), models));
            return;
        }
        const std::size_t place = found->second;
        ReadRule rule = read_rule(document, pending.node, book_, &entries_[place].rule, pending.market, faults_);
        add(document, pending.node, std::move(rule), place, false);
    }

    void add(const Document& document, Node node, ReadRule rule, std::size_t place, bool is_model) {
        const auto [known, is_new] = by_id_.emplace(rule.info.id, entries_.size());
        if (!is_new && !rule.info.id.empty()) {
            const RuleInfo& other = entries_[known->second].rule.info;
            faults_.error(
                document, node.find("rule"), "duplicate-rule", fmt::format("rule '{}' is defined twice", rule.info.id),
                fmt::format("it stands in {} line {} too; an id is permanent and stands once", other.file, other.line));
        }
        const bool is_wide = holds_others(rule.info.markets);
        entries_.push_back({place, is_model, is_wide, std::move(rule)});
    }

    bool holds_others(const std::vector<std::string>& markets) const {
        return std::any_of(book_.markets.begin(), book_.markets.end(), [&](const Market& part) {
            return std::any_of(part.within.begin(), part.within.end(), [&](const std::string& larger) {
                return std::find(markets.begin(), markets.end(), larger) != markets.end();
            });
        });
    }

    void hand_over() {
        std::vector<std::uint32_t> order(entries_.size());
        for (std::uint32_t i = 0; i < order.size(); ++i) order[i] = i;
        const auto key = [&](std::uint32_t at) {
            const Entry& entry = entries_[at];
            return std::tuple(entry.place, entry.is_model, entry.is_wide, at);
        };
        std::sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) { return key(a) < key(b); });
        for (const std::uint32_t at : order) {
            book_.rules.push_back(std::move(entries_[at].rule.info));
            book_.compiled.push_back(std::move(entries_[at].rule.compiled));
        }
    }

    BookData& book_;
    Faults& faults_;
    std::vector<Entry> entries_;
    std::vector<Pending> pending_;
    std::map<std::string, std::size_t> by_id_;  // place in entries_
};

void index_by_concept(BookData& book) {
    // A share turns any kind into composition, and a likeness turns it into a quality.
    constexpr std::uint32_t kTurned =
        1U << static_cast<unsigned>(Kind::composition) | 1U << static_cast<unsigned>(Kind::quality);
    book.by_concept.assign(book.vocabulary.concepts.size(), {});
    for (std::uint32_t rule = 0; rule < book.compiled.size(); ++rule) {
        for (const ClaimCondition& condition : book.compiled[rule].when) {
            condition.says.for_each([&](ConceptId id) {
                const auto kind = static_cast<unsigned>(book.vocabulary.concepts[id].kind);
                std::vector<std::uint32_t>& rules = book.by_concept[id];
                const bool can_hold = id != 0 && (condition.kinds & (kTurned | 1U << kind)) != 0;
                if (can_hold && (rules.empty() || rules.back() != rule)) rules.push_back(rule);
            });
        }
    }
}

}  // namespace

void load_rules(BookData& book, Faults& faults) {
    RuleLoader(book, faults).load();
    index_by_concept(book);
}

}  // namespace grainside::rules
