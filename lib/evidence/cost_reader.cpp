#include "evidence/cost_reader.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <variant>

#include "document/inert_text.h"
#include "evidence/cost_value.h"
#include "evidence/money_text.h"
#include "evidence/region_market.h"
#include "rules/references.h"

namespace grainside::evidence {

using document::Node;
using measure::QuantityFault;

namespace {

constexpr std::string_view kNothing = "none";
constexpr std::string_view kSameAs = "same as ";
constexpr std::string_view kSums[] = {"making", "maker-price", "with-freight"};
// The last group that each sum takes in.
constexpr CostGroup kLastOfSum[] = {CostGroup::packing, CostGroup::margin, CostGroup::insurance};

std::optional<std::size_t> position(std::string_view name, std::span<const std::string_view> names) {
    const auto at = std::find(names.begin(), names.end(), name);
    if (at == names.end()) return std::nullopt;
    return static_cast<std::size_t>(at - names.begin());
}

std::vector<std::string_view> group_names() {
    std::vector<std::string_view> names;
    for (std::size_t g = 0; g < kCostGroupCount; ++g) names.push_back(name_of(static_cast<CostGroup>(g)));
    return names;
}

// What a share in the line of `group` that stands at `entry` may be `of`; nothing, with `fault` set, where no such
// thing stands before it.
std::optional<ShareBase> share_base_named(std::string_view name, CostGroup group, std::size_t entry,
                                          const DossierCosts& costs, QuantityFault& fault) {
    ShareBase base;
    base.name = name;
    const auto later = [&](std::string_view what) {
        fault = {"not-before", fmt::format("{} '{}' comes after {}", what, name, name_of(group)),
                 "a share is one of what is added up before it; groups are added in the order of EVIDENCE.md"};
        return std::nullopt;
    };
    if (const auto sum = position(name, kSums)) {
        if (kLastOfSum[*sum] >= group) return later("the sum");
        base.kind = ShareBase::Kind::sum;
        base.sum = static_cast<CostSum>(*sum);
        return base;
    }
    const std::vector<std::string_view> groups = group_names();
    if (const auto at = position(name, groups)) {
        if (static_cast<CostGroup>(*at) >= group) return later("the group");
        base.kind = ShareBase::Kind::group;
        base.group = static_cast<CostGroup>(*at);
        return base;
    }
    std::vector<std::string_view> known(groups.begin(), groups.begin() + static_cast<std::ptrdiff_t>(group));
    for (std::size_t i = 0; i < std::min(entry, costs.entries.size()); ++i) {
        if (costs.entries[i].item != name) {
            // A line without a name of its own has that of its group, which is there already.
            if (!position(costs.entries[i].item, groups)) known.push_back(costs.entries[i].item);
            continue;
        }
        base.kind = ShareBase::Kind::entry;
        base.entry = i;
        return base;
    }
    for (std::size_t sum = 0; sum < std::size(kSums); ++sum) {
        if (kLastOfSum[sum] < group) known.push_back(kSums[sum]);
    }
    const std::string near = document::suggestion(name, known);
    fault = {
        "unknown-item", fmt::format("no line or group '{}' stands before this one", document::inert_text(name)),
        near.empty() ? "an item or a group that stands before it, or `making`, `maker-price`, `with-freight`" : near};
    return std::nullopt;
}

// What a base takes in: whole groups, or one line of one.
struct Reach {
    CostGroup first{}, last{};
    std::size_t entry = kNoCostIndex;
};
Reach reach_of(const ShareBase& base, const DossierCosts& costs) {
    switch (base.kind) {
        case ShareBase::Kind::group:
            return {base.group, base.group};
        case ShareBase::Kind::sum:
            return {CostGroup{}, kLastOfSum[static_cast<std::size_t>(base.sum)]};
        case ShareBase::Kind::entry:
            break;
    }
    const CostGroup group = costs.entries[base.entry].group;
    return {group, group, base.entry};
}
bool overlap(const Reach& a, const Reach& b) {
    if (a.entry != kNoCostIndex && b.entry != kNoCostIndex) return a.entry == b.entry;
    return a.first <= b.last && b.first <= a.last;
}

class CostsReader {
public:
    CostsReader(const EntryReader& reader, const EvidenceData& data, DossierData& dossier)
        : reader_(reader), book_(data.costs), dossier_(dossier), costs_(dossier.costs) {}

    void read(Node node) {
        if (!reader_.check_keys(
                node, {"currency", "exchange", "sales_tax", "sold_in", "materials", "hardware", "labour", "overhead",
                       "packing", "margin", "freight", "insurance", "duty", "fees", "other"})) {
            return;
        }
        costs_.on_record = true;
        read_currency(node);
        if (const Node exchange = node.find("exchange"); exchange.exists()) read_exchange(exchange);
        if (const Node tax = node.find("sales_tax"); tax.exists()) costs_.sales_tax = value(tax, CostInput::sales_tax);
        read_market(node);
        for (std::size_t g = 0; g < kCostGroupCount; ++g) {
            const auto group = static_cast<CostGroup>(g);
            if (const Node lines = node.find(name_of(group)); lines.exists()) read_group(lines, group);
        }
    }

private:
    std::optional<CostValue> value(Node node, CostInput input) {
        if (!node.is_scalar()) {
            reader_.error(node, "wrong-type", fmt::format("`{}` is a text", key_of(input)));
            return std::nullopt;
        }
        auto read = read_cost_value(input, node.text(), book_);
        if (const auto* fault = std::get_if<QuantityFault>(&read)) {
            reader_.error(node, fault->code, fault->message, fault->hint);
            return std::nullopt;
        }
        auto& sound = std::get<CostValue>(read);
        sound.line = node.line();
        return std::move(sound);
    }

    // "same as stitching": the value of a line before it, as one unknown that both share.
    std::optional<CostValue> same_value(Node node, CostInput input) {
        std::string_view item = node.text().substr(kSameAs.size());
        while (item.starts_with(' ')) item.remove_prefix(1);
        std::vector<std::string_view> known;
        for (std::size_t i = 0; i < costs_.entries.size(); ++i) {
            const CostValue* const there = find_value(costs_.entries[i], input);
            if (there == nullptr) continue;
            known.push_back(costs_.entries[i].item);
            if (costs_.entries[i].item != item) continue;
            CostValue same = *there;
            if (same.same_as == kNoCostIndex) same.same_as = i;
            same.line = node.line();
            return same;
        }
        reader_.error(
            node, "unknown-item",
            fmt::format("no line '{}' with a `{}` stands before this one", document::inert_text(item), key_of(input)),
            reader_.faults().suggestion(item, known));
        return std::nullopt;
    }

    bool check_currency(Node place, std::string_view code, bool at_key) {
        const auto read = parse_money(fmt::format("1 {}", code), book_.currencies);
        const bool three = code.size() == 3 && code.find(' ') == std::string_view::npos;
        const auto* fault = std::get_if<QuantityFault>(&read);
        if (three && fault == nullptr && std::get<ParsedMoney>(read).currency == code) return true;
        const std::string message = fmt::format("'{}' is no code of a currency", code);
        const std::string hint = fault != nullptr && fault->code == "unknown-currency"
                                     ? fault->hint
                                     : std::string("three capitals of ISO 4217, as in `EUR`");
        if (at_key) {
            reader_.error_at_key(place, "unknown-currency", message, hint);
        } else {
            reader_.error(place, "unknown-currency", message, hint);
        }
        return false;
    }

    void read_currency(Node node) {
        if (const Node currency = node.find("currency"); currency.exists()) {
            if (check_currency(currency, currency.text(), false)) costs_.currency = currency.text();
        } else if (dossier_.paid) {
            costs_.currency = dossier_.paid->currency;
        } else {
            reader_.error(node, "missing-currency", "nothing says in which currency the costs add up",
                          "write `currency: EUR` here, or the sample's `price`");
        }
    }

    void read_exchange(Node node) {
        if (!node.is_mapping()) {
            reader_.error(node, "wrong-type", "`exchange` is a mapping of currencies to what one of each is worth",
                          "as in `exchange: {USD: 0.86-0.88}`");
            return;
        }
        for (Node one : node) {
            if (const std::string comma = document::key_hint(one, {}, reader_.faults()); !comma.empty()) {
                reader_.error_at_key(one, "unknown-key", fmt::format("the key `{}` is no currency", one.key()), comma);
                continue;
            }
            const bool sound = check_currency(one, one.key(), true);
            auto worth = value(one, CostInput::exchange);
            if (sound && one.key() == costs_.currency) {
                reader_.error_at_key(one, "both-ways", fmt::format("the totals stand in {} already", one.key()),
                                     "name another currency, or change `currency`");
            } else if (sound && worth) {
                costs_.exchange.push_back({std::string(one.key()), std::move(*worth)});
            }
        }
    }

    void read_market(Node node) {
        if (const Node market = node.find("sold_in"); market.exists()) {
            std::vector<std::string_view> names;
            for (const rules::Market& known : reader_.book().markets) names.push_back(known.name);
            if (reader_.choice(market, names, "market")) costs_.market = market.text();
        } else {
            // A sample was bought in one place: of several markets the first counts.
            const std::vector<std::string> named = markets_of_region(dossier_.listing.region);
            if (!named.empty()) costs_.market = named.front();
        }
        const std::string asked[] = {costs_.market};
        const auto& markets = reader_.book().markets;
        const bool known = std::any_of(markets.begin(), markets.end(),
                                       [&](const rules::Market& market) { return market.name == costs_.market; });
        if (!known) return;
        for (const std::string_view one : rules::reach_of(asked, markets)) costs_.reach.emplace_back(one);
    }

    // A list of lines, one line, an amount, or `none`.
    void read_group(Node node, CostGroup group) {
        costs_.stated = static_cast<std::uint16_t>(costs_.stated | group_bit(group));
        if (node.is_scalar() && node.text() == kNothing) return;
        if (node.is_sequence()) {
            if (node.begin() == node.end()) {
                reader_.error(node, "missing-key", fmt::format("`{}` is an empty list", name_of(group)),
                              "write `none` where there is nothing to pay, or leave the key out");
            }
            for (Node line : node) read_line(line, group);
        } else if (node.is_mapping() || node.is_scalar()) {
            read_line(node, group);
        } else {
            reader_.error_at_key(node, "missing-key", fmt::format("`{}` is empty", name_of(group)),
                                 "write `none` where there is nothing to pay, or leave the key out");
        }
    }

    void read_line(Node node, CostGroup group) {
        if (++lines_ > kMaxCostLines) {
            if (lines_ == kMaxCostLines + 1) {
                reader_.error(node, "too-many-lines", fmt::format("more than {} lines of costs", kMaxCostLines),
                              "put small things together");
            }
            return;
        }
        CostEntry entry;
        entry.group = group;
        entry.line = node.line();
        bool sound = true;
        if (node.is_scalar()) {
            auto amount = value(node, CostInput::amount);
            sound = amount.has_value();
            if (amount) entry.values.push_back(std::move(*amount));
        } else if (!node.is_mapping()) {
            reader_.error(node, "wrong-type", "a line of costs is a mapping, or an amount");
            return;
        } else {
            sound = read_keys(node, entry);
        }
        name(node, entry);
        if (sound) {
            for (const EntryFault& fault : check_entry(entry, costs_, book_)) {
                const Node at = fault.at && node.is_mapping() ? node.find(key_of(*fault.at)) : node;
                reader_.error(at, fault.code, fault.message, fault.hint);
            }
        }
        costs_.entries.push_back(std::move(entry));
    }

    // False where a value is missing because of a fault, so that what hangs on it is not told as well.
    bool read_keys(Node node, CostEntry& entry) {
        const std::vector<CostInput> inputs = inputs_of(entry.group);
        bool sound = true;
        for (Node child : node) {
            const std::string_view key = child.key();
            const auto input =
                std::find_if(inputs.begin(), inputs.end(), [&](CostInput one) { return key_of(one) == key; });
            if (input != inputs.end()) {
                auto read = child.is_scalar() && child.text().starts_with(kSameAs) ? same_value(child, *input)
                                                                                   : value(child, *input);
                sound = sound && read.has_value();
                if (read) entry.values.push_back(std::move(*read));
            } else if (!is_other_key(key, entry.group)) {
                unknown_key(child, entry.group, inputs);
                sound = false;
            }
        }
        entry.item = reader_.text(node, "item");
        if (const Node part = node.find("part"); part.exists()) entry.part = reader_.part(part, part.text());
        if (const Node material = node.find("material"); material.exists()) {
            entry.material = reader_.require_concept(material);
        }
        if (const Node of = node.find("of"); of.exists())
            sound = read_of(of, node.find("share").exists(), entry) && sound;
        return read_base(node, entry) && sound;
    }

    static bool is_other_key(std::string_view key, CostGroup group) {
        if (key == "item") return true;
        return group == CostGroup::duty ? key == "base" : key == "part" || key == "material" || key == "of";
    }

    void unknown_key(Node child, CostGroup group, const std::vector<CostInput>& inputs) {
        std::vector<std::string_view> known = {"item"};
        for (const CostInput one : inputs) known.push_back(key_of(one));
        for (const std::string_view other : {"part", "material", "of", "base"}) {
            if (is_other_key(other, group)) known.push_back(other);
        }
        const std::string near = document::key_hint(child, known, reader_.faults());
        reader_.error_at_key(child, "unknown-key", fmt::format("unknown key `{}`", child.key()),
                             near.empty() ? fmt::format("one of {}", fmt::join(known, ", ")) : near);
    }

    // A name that no other line has, so that shares and changes can point at it.
    void name(Node node, CostEntry& entry) {
        if (entry.item.empty()) entry.item = name_of(entry.group);
        const bool twice = std::any_of(costs_.entries.begin(), costs_.entries.end(),
                                       [&](const CostEntry& known) { return known.item == entry.item; });
        if (!twice) return;
        const Node item = node.is_mapping() ? node.find("item") : Node();
        reader_.error(item.exists() ? item : node, "duplicate-item",
                      fmt::format("there is another line '{}'", entry.item), "give each an `item` of its own");
    }

    bool read_of(Node node, bool has_share, CostEntry& entry) {
        bool sound = true;
        if (!has_share) {
            reader_.error_at_key(node, "missing-key", "`of` needs `share`", "as in `{share: 35 %, of: labour}`");
            return false;
        }
        reader_.each_text(node, [&](Node one) {
            QuantityFault fault;
            auto base = share_base_named(one.text(), entry.group, costs_.entries.size(), costs_, fault);
            if (!base) {
                reader_.error(one, fault.code, fault.message, fault.hint);
                sound = false;
                return;
            }
            const Reach reach = reach_of(*base, costs_);
            const auto same = std::find_if(entry.of.begin(), entry.of.end(), [&](const ShareBase& before) {
                return overlap(reach, reach_of(before, costs_));
            });
            if (same != entry.of.end()) {
                reader_.error(
                    one, "both-ways",
                    base->name == same->name
                        ? fmt::format("'{}' stands twice in `of`, and would count twice", base->name)
                        : fmt::format("'{}' and '{}' share lines, which would count twice", same->name, base->name),
                    "name each line, group or sum once");
                sound = false;
            } else {
                entry.of.push_back(std::move(*base));
            }
        });
        return sound && !entry.of.empty();
    }

    // Of which value a duty is a share: said outright, or by the market's rules.
    bool read_base(Node node, CostEntry& entry) {
        const Node base = node.find("base");
        const bool rated = node.find("rate").exists();
        if (entry.group != CostGroup::duty) return true;
        if (base.exists()) {
            const auto at = reader_.choice(base, kDutyBases, "base");
            if (!at) return false;
            entry.duty_base = static_cast<DutyBase>(*at);
            entry.duty_because = "as the dossier says";
            if (rated) return true;
            reader_.error_at_key(base, "missing-key", "`base` needs `rate`", "an amount has no base");
            return false;
        }
        if (!rated) return true;
        for (const CustomsBase& known : book_.bases) {
            if (std::find(costs_.reach.begin(), costs_.reach.end(), known.market) == costs_.reach.end()) continue;
            entry.duty_base = known.base;
            entry.duty_because = known.because;
            entry.duty_sources = known.sources;
            return true;
        }
        reader_.error(node, "no-duty-base",
                      costs_.market.empty()
                          ? std::string("nothing says where the product is sold, and so what duty is taken of")
                          : fmt::format("the book does not know what duty is taken of in the market '{}'",
                                        document::inert_text(costs_.market)),
                      "write `base: maker-price` or `base: with-freight`, or the market as `sold_in`");
        return false;
    }

    const EntryReader& reader_;
    const CostBook& book_;
    DossierData& dossier_;
    DossierCosts& costs_;
    std::size_t lines_ = 0;
};

}  // namespace

void read_price(const EntryReader& reader, Node price, const EvidenceData& data, DossierData& dossier) {
    if (!price.is_scalar()) return;  // told already
    auto read = read_paid(price.text(), data.costs);
    if (const auto* fault = std::get_if<QuantityFault>(&read)) {
        // A decimal comma keeps its own code: it is mended in another way than a price that is none.
        const bool comma = fault->code == "decimal-comma";
        reader.error(price, comma ? fault->code : "bad-price", fault->message, fault->hint);
        return;
    }
    auto& paid = std::get<CostValue>(read);
    paid.line = price.line();
    if (paid.measured.value <= 0) {
        reader.faults().warning(reader.document(), price, "nothing-paid", "a price of nothing gives no price multiple",
                                "leave `price` out where nothing was paid");
    }
    dossier.paid = std::move(paid);
}

void read_costs(const EntryReader& reader, Node costs, const EvidenceData& data, DossierData& dossier) {
    CostsReader(reader, data, dossier).read(costs);
}

}  // namespace grainside::evidence
