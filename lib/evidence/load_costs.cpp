#include "evidence/load_costs.h"

#include <fmt/format.h>

#include <algorithm>

#include "evidence/cost_value.h"
#include "evidence/entry_reader.h"

namespace grainside::evidence {

using document::Faults;
using document::Node;
using measure::QuantityFault;

namespace {

constexpr double kMostDigits = 4;
constexpr std::size_t kMostSymbolBytes = 8;

class CostLoader {
public:
    CostLoader(const EntryReader& reader, CostBook& book) : reader_(reader), book_(book) {}

    void load_currency(Node node) {
        if (!reader_.check_keys(node, {"currency", "name", "digits", "symbol"})) return;
        Currency currency;
        currency.id = reader_.required_text(node, "currency");
        currency.name = reader_.required_text(node, "name");
        currency.symbol = reader_.text(node, "symbol");
        currency.digits = static_cast<int>(reader_.required_number(node, "digits", 0, kMostDigits).value_or(2));
        const bool capitals =
            std::all_of(currency.id.begin(), currency.id.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
        if (!currency.id.empty() && (currency.id.size() != 3 || !capitals)) {
            reader_.error(node.find("currency"), "bad-currency", fmt::format("'{}' is no code", currency.id),
                          "three capitals of ISO 4217");
        }
        if (currency.symbol.size() > kMostSymbolBytes) {
            reader_.error(node.find("symbol"), "out-of-range", "a symbol is a sign or two");
        }
        add(node.find("currency"), book_.currencies, std::move(currency), "currency");
    }

    void load_usual(Node node) {
        if (!reader_.check_keys(node, {"usual", "title", "input", "range", "groups", "materials", "categories", "named",
                                       "whole_product", "sources"})) {
            return;
        }
        UsualCost usual;
        usual.id = reader_.required_id(node, "usual");
        usual.title = reader_.required_text(node, "title");
        usual.sources = reader_.required_sources(node);
        read_range(node, usual);
        if (const Node groups = node.find("groups"); groups.exists()) {
            usual.groups = read_groups(groups);
        }
        if (const Node materials = node.find("materials"); materials.exists()) {
            usual.materials = reader_.concepts(materials);
        }
        if (const Node categories = node.find("categories"); categories.exists()) read_categories(categories, usual);
        if (const Node named = node.find("named"); named.exists()) usual.named = reader_.texts(named);
        if (const Node whole = node.find("whole_product"); whole.exists()) {
            usual.whole_product = read_yes_no(reader_.document(), whole, reader_.faults()).value_or(false);
        }
        add(node.find("usual"), book_.usual, std::move(usual), "usual");
    }

    void load_duty(Node node) {
        if (!reader_.check_keys(node, {"duty", "title", "market", "rate", "brackets", "sources"})) return;
        Duty duty;
        duty.id = reader_.required_id(node, "duty");
        duty.title = reader_.required_text(node, "title");
        duty.sources = reader_.required_sources(node);
        duty.market = market_of(node, "market");
        const Node brackets = node.find("brackets");
        if (node.find("rate").exists() == brackets.exists()) {
            reader_.error(node, brackets.exists() ? "both-ways" : "missing-key",
                          "a duty has either one `rate` or `brackets`");
        } else if (!brackets.exists()) {
            duty.brackets.push_back({std::nullopt, rate_of(node)});
        } else if (!brackets.is_sequence()) {
            reader_.error(brackets, "wrong-type", "`brackets` is a list");
        } else {
            for (Node bracket : brackets) read_bracket(bracket, duty);
            check_brackets(brackets, duty);
        }
        add(node.find("duty"), book_.duties, std::move(duty), "duty");
    }

    void load_customs(Node node) {
        if (!reader_.check_keys(node, {"customs", "base", "because", "sources"})) return;
        CustomsBase customs;
        customs.market = market_of(node, "customs");
        customs.because = reader_.required_text(node, "because");
        customs.sources = reader_.required_sources(node);
        if (const Node base = node.find("base"); !base.exists()) {
            reader_.error(node, "missing-key", "`base` must stand here");
        } else if (const auto at = reader_.choice(base, kDutyBases, "base")) {
            customs.base = static_cast<DutyBase>(*at);
        }
        const bool twice = std::any_of(book_.bases.begin(), book_.bases.end(),
                                       [&](const CustomsBase& known) { return known.market == customs.market; });
        if (twice) {
            reader_.error(node.find("customs"), "duplicate-customs",
                          fmt::format("the market '{}' stands twice", customs.market));
        }
        book_.bases.push_back(std::move(customs));
    }

    void load_expected(Node node) {
        if (!reader_.check_keys(node, {"expected", "sources"})) return;
        reader_.required_sources(node);
        for (const CostGroup group : read_groups(node.find("expected"))) book_.expected.push_back(group);
    }

private:
    template <typename Item>
    void add(Node place, std::vector<Item>& items, Item item, std::string_view what) {
        if (!item.id.empty() && index_of(items, item.id) != kNone) {
            reader_.error(place, fmt::format("duplicate-{}", what), fmt::format("'{}' is defined twice", item.id),
                          "an id is permanent and stands once");
        }
        items.push_back(std::move(item));
    }

    std::string market_of(Node node, std::string_view key) {
        const Node market = node.find(key);
        if (!market.exists()) {
            reader_.error(node, "missing-key", fmt::format("`{}` must stand here", key));
            return {};
        }
        std::vector<std::string_view> names;
        for (const rules::Market& known : reader_.book().markets) names.push_back(known.name);
        reader_.choice(market, names, "market");
        return std::string(market.text());
    }

    std::vector<CostGroup> read_groups(Node list) {
        std::vector<std::string_view> names;
        for (std::size_t g = 0; g < kCostGroupCount; ++g) names.push_back(name_of(static_cast<CostGroup>(g)));
        std::vector<CostGroup> groups;
        reader_.each_text(list, [&](Node one) {
            if (const auto at = reader_.choice(one, names, "group")) groups.push_back(static_cast<CostGroup>(*at));
        });
        return groups;
    }

    void read_categories(Node list, UsualCost& usual) {
        std::vector<std::string_view> names;
        for (const vocabulary::Category& known : reader_.book().vocabulary.categories) names.push_back(known.name);
        reader_.each_text(list, [&](Node one) {
            if (const auto at = reader_.choice(one, names, "category")) usual.categories |= 1U << *at;
        });
    }

    std::optional<CostValue> value(Node node, CostInput input) {
        auto read = read_cost_value(input, node.text(), book_);
        if (const auto* fault = std::get_if<QuantityFault>(&read)) {
            reader_.error(node, fault->code, fault->message, fault->hint);
            return std::nullopt;
        }
        return std::move(std::get<CostValue>(read));
    }

    void read_range(Node node, UsualCost& usual) {
        const Node input = node.find("input");
        const Node range = node.find("range");
        if (!input.exists() || !range.exists()) {
            reader_.error(node, "missing-key", "`input` and `range` must stand here");
            return;
        }
        std::vector<std::string_view> keys;
        for (std::size_t i = 0; i < kCostInputCount; ++i) keys.push_back(key_of(static_cast<CostInput>(i)));
        const auto at = reader_.choice(input, keys, "input");
        if (!at) return;
        if (auto read = value(range, static_cast<CostInput>(*at))) {
            if (read->distribution != measure::Distribution::rectangular || read->usual != kNone) {
                reader_.error(range, "bad-range", fmt::format("'{}' is no range", range.text()),
                              "two ends, as in `65-75 %`");
            }
            usual.range = std::move(*read);
        }
    }

    double rate_of(Node node) {
        const Node rate = node.find("rate");
        if (!rate.exists()) {
            reader_.error(node, "missing-key", "`rate` must stand here");
            return 0;
        }
        const auto read = value(rate, CostInput::duty_rate);
        if (!read) return 0;
        if (read->measured.u > 0 || read->duty != kNone) {
            reader_.error(rate, "bad-bracket", "a rate of the law is one number, as in `9 %`");
        }
        return read->measured.value;
    }

    void read_bracket(Node node, Duty& duty) {
        if (!reader_.check_keys(node, {"up_to", "rate"})) return;
        DutyBracket bracket;
        bracket.rate = rate_of(node);
        if (const Node end = node.find("up_to"); end.exists()) {
            if (const auto read = value(end, CostInput::amount)) {
                const bool other = !duty.currency.empty() && duty.currency != read->currency;
                if (other || read->measured.u > 0 || read->per) {
                    reader_.error(end, "bad-bracket", "an end is one amount, in the currency of the others");
                }
                duty.currency = read->currency;
                bracket.up_to = read->measured.value;
            }
        }
        duty.brackets.push_back(bracket);
    }

    void check_brackets(Node node, const Duty& duty) {
        double last = 0;
        for (std::size_t i = 0; i < duty.brackets.size(); ++i) {
            const DutyBracket& bracket = duty.brackets[i];
            const bool open = !bracket.up_to;
            if (open != (i + 1 == duty.brackets.size()) || (!open && *bracket.up_to <= last)) {
                reader_.error(node, "bad-bracket", "the ends rise, and only the last bracket is open");
                return;
            }
            last = bracket.up_to.value_or(last);
        }
        if (duty.brackets.empty()) reader_.error(node, "bad-bracket", "a duty needs at least one bracket");
    }

    const EntryReader& reader_;
    CostBook& book_;
};

}  // namespace

void load_costs(const rules::BookData& book, EvidenceData& data, Faults& faults) {
    // Money is read only once the currencies are known.
    each_entry(book, "costs/", faults, [&](const EntryReader& reader, Node node) {
        if (node.find("currency").exists()) CostLoader(reader, data.costs).load_currency(node);
    });
    each_entry(book, "costs/", faults, [&](const EntryReader& reader, Node node) {
        CostLoader loader(reader, data.costs);
        if (node.find("usual").exists()) {
            loader.load_usual(node);
        } else if (node.find("duty").exists()) {
            loader.load_duty(node);
        } else if (node.find("customs").exists()) {
            loader.load_customs(node);
        } else if (node.find("expected").exists()) {
            loader.load_expected(node);
        } else if (!node.find("currency").exists()) {
            reader.error(node, "missing-key",
                         "an entry begins with `currency`, `usual`, `duty`, `customs` or "
                         "`expected`");
        }
    });
}

}  // namespace grainside::evidence
