#include "cost/changes.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <variant>

#include "document/faults.h"
#include "document/inert_text.h"
#include "evidence/cost_value.h"

namespace grainside::cost {

using evidence::CostEntry;
using evidence::CostInput;
using evidence::CostValue;
using measure::QuantityFault;

namespace {

constexpr CostInput kOneOf[] = {CostInput::cutting_yield, CostInput::waste, CostInput::allowance};

bool is_cut(CostInput input) {
    return std::find(std::begin(kOneOf), std::end(kOneOf), input) != std::end(kOneOf);
}

class Changer {
public:
    Changer(const evidence::CostBook& book, evidence::DossierCosts& costs, std::optional<CostValue>& paid,
            std::vector<std::string>& remarks)
        : book_(book), costs_(costs), paid_(paid), remarks_(remarks) {}

    void apply(const CostChange& change) {
        if (CostEntry* const entry = entry_named(change.item)) {
            set_value(*entry, change);
        } else if (change.item == "exchange") {
            set_exchange(change);
        } else if (change.item == "costs") {
            if (!known_key(change, "sales_tax")) return;
            if (auto value = read(change, CostInput::sales_tax)) costs_.sales_tax = std::move(value);
        } else if (change.item == "sample") {
            if (!known_key(change, "price")) return;
            if (auto value = sound(change, evidence::read_paid(change.value, book_))) paid_ = std::move(value);
        } else {
            unknown_item(change);
        }
    }

    // What hangs together is looked at once all changes are in.
    std::vector<Issue> take() {
        for (const std::string& item : changed_) {
            for (const evidence::EntryFault& fault : check_entry(*entry_named(item), costs_, book_)) {
                add(item, fault.code, fault.message, fault.hint);
            }
        }
        return std::move(issues_);
    }

private:
    void add(std::string_view item, std::string_view code, const std::string& message, std::string hint) {
        Issue issue;
        issue.code = code;
        issue.message = fmt::format("{}: {}", document::inert_text(item), message);
        issue.hint = std::move(hint);
        issues_.push_back(std::move(issue));
    }

    std::optional<CostValue> read(const CostChange& change, CostInput input) {
        return sound(change, evidence::read_cost_value(input, change.value, book_));
    }

    std::optional<CostValue> sound(const CostChange& change, std::variant<CostValue, QuantityFault> read) {
        if (const auto* fault = std::get_if<QuantityFault>(&read)) {
            add(change.item, fault->code, fault->message, fault->hint);
            return std::nullopt;
        }
        return std::move(std::get<CostValue>(read));
    }

    CostEntry* entry_named(std::string_view item) {
        for (CostEntry& entry : costs_.entries) {
            if (entry.item == item) return &entry;
        }
        // A group without lines gets its first one.
        for (std::size_t g = 0; g < evidence::kCostGroupCount; ++g) {
            const auto group = static_cast<CostGroup>(g);
            if (name_of(group) != item || group == CostGroup::duty) continue;
            const bool any = std::any_of(costs_.entries.begin(), costs_.entries.end(),
                                         [&](const CostEntry& entry) { return entry.group == group; });
            if (any) return nullptr;
            return &insert(group);
        }
        return nullptr;
    }

    // Behind the lines of the groups before it; shares that point at later lines move with them.
    CostEntry& insert(CostGroup group) {
        const auto at = std::find_if(costs_.entries.begin(), costs_.entries.end(),
                                     [&](const CostEntry& entry) { return entry.group > group; });
        const auto place = static_cast<std::size_t>(at - costs_.entries.begin());
        for (CostEntry& entry : costs_.entries) {
            for (evidence::ShareBase& base : entry.of) {
                if (base.kind == evidence::ShareBase::Kind::entry && base.entry >= place) ++base.entry;
            }
            for (CostValue& value : entry.values) {
                if (value.same_as != evidence::kNoCostIndex && value.same_as >= place) ++value.same_as;
            }
        }
        CostEntry entry;
        entry.group = group;
        entry.item = name_of(group);
        costs_.stated = static_cast<std::uint16_t>(costs_.stated | evidence::group_bit(group));
        return *costs_.entries.insert(at, std::move(entry));
    }

    void set_value(CostEntry& entry, const CostChange& change) {
        const std::vector<CostInput> inputs = evidence::inputs_of(entry.group);
        const auto input = std::find_if(inputs.begin(), inputs.end(),
                                        [&](CostInput one) { return evidence::key_of(one) == change.key; });
        if (input == inputs.end()) {
            std::vector<std::string_view> keys;
            keys.reserve(inputs.size());
            for (const CostInput one : inputs) keys.push_back(evidence::key_of(one));
            const std::string near =
                starts_with_digit(change.key) ? keyed(change, entry.group) : document::suggestion(change.key, keys);
            add(change.item, "unknown-key", fmt::format("there is no value `{}`", document::inert_text(change.key)),
                near.empty() ? fmt::format("one of {}", fmt::join(keys, ", ")) : near);
            return;
        }
        auto value = read(change, *input);
        if (!value) return;
        const auto at = static_cast<std::size_t>(&entry - costs_.entries.data());
        tell_cut(entry, *input);
        std::erase_if(entry.values, [&](const CostValue& old) {
            return old.input == *input || (is_cut(*input) && is_cut(old.input));
        });
        to_check(entry.item);
        for (CostEntry& other : costs_.entries) {
            for (CostValue& follower : other.values) {
                const bool follows = follower.input == *input || (is_cut(follower.input) && is_cut(*input));
                if (!follows || follower.same_as != at) continue;
                follower = *value;
                follower.same_as = at;
                to_check(other.item);
            }
        }
        entry.values.push_back(std::move(*value));
    }

    void to_check(const std::string& item) {
        if (std::find(changed_.begin(), changed_.end(), item) == changed_.end()) changed_.push_back(item);
    }

    // A value of its own in place of one that was the same as another's.
    void tell_cut(const CostEntry& entry, CostInput input) {
        for (const CostValue& old : entry.values) {
            const bool replaced = old.input == input || (is_cut(old.input) && is_cut(input));
            if (!replaced || old.same_as == evidence::kNoCostIndex) continue;
            remarks_.push_back(fmt::format("The {} of {} no longer follows that of {}.", evidence::words_of(old.input),
                                           entry.item, costs_.entries[old.same_as].item));
        }
    }

    void set_exchange(const CostChange& change) {
        for (evidence::ExchangeRate& rate : costs_.exchange) {
            if (rate.currency != change.key) continue;
            if (auto value = read(change, CostInput::exchange)) rate.worth = std::move(*value);
            return;
        }
        std::vector<std::string_view> known;
        for (const evidence::ExchangeRate& rate : costs_.exchange) known.push_back(rate.currency);
        add(change.item, "unknown-key",
            fmt::format("the dossier has no rate for '{}'", document::inert_text(change.key)),
            document::suggestion(change.key, known));
    }

    bool known_key(const CostChange& change, std::string_view key) {
        if (change.key == key) return true;
        add(change.item, "unknown-key", fmt::format("there is no value `{}`", document::inert_text(change.key)),
            starts_with_digit(change.key) ? as_change(change, key) : fmt::format("only `{}` can be changed here", key));
        return false;
    }

    static bool starts_with_digit(std::string_view text) { return !text.empty() && text[0] >= '0' && text[0] <= '9'; }

    // 'freight: 5 USD' lacks its key.
    static std::string as_change(const CostChange& change, std::string_view key) {
        return document::inert_text(fmt::format("write `{}: {} {} {}`", change.item, key, change.key, change.value));
    }

    // With the key that such money has in the group; nothing where it is no money.
    std::string keyed(const CostChange& change, CostGroup group) const {
        const auto read = evidence::read_cost_value(CostInput::amount, change.key + ' ' + change.value, book_);
        const auto* const money = std::get_if<CostValue>(&read);
        if (money == nullptr) return {};
        const bool work = group == CostGroup::labour && money->per == measure::Dimension::time;
        return as_change(change, evidence::key_of(!money->per ? CostInput::amount
                                                  : work      ? CostInput::rate
                                                              : CostInput::price));
    }

    void unknown_item(const CostChange& change) {
        std::vector<std::string_view> known;
        for (const CostEntry& entry : costs_.entries) known.push_back(entry.item);
        for (const std::string_view other : {"exchange", "costs", "sample"}) known.push_back(other);
        const std::string near = document::suggestion(change.item, known);
        std::string all;
        for (const std::string_view one : known) all += (all.empty() ? "" : ", ") + document::inert_text(one);
        add(change.item, "unknown-item", "the dossier has no such line of costs",
            near.empty() ? "one of " + all : document::inert_text(near));
    }

    const evidence::CostBook& book_;
    evidence::DossierCosts& costs_;
    std::optional<CostValue>& paid_;
    std::vector<std::string>& remarks_;
    std::vector<std::string> changed_;  // items, with those that follow
    std::vector<Issue> issues_;
};

}  // namespace

std::vector<Issue> apply_changes(const std::vector<CostChange>& changes, const evidence::CostBook& book,
                                 evidence::DossierCosts& costs, std::optional<CostValue>& paid,
                                 std::vector<std::string>& remarks) {
    Changer changer(book, costs, paid, remarks);
    for (const CostChange& change : changes) changer.apply(change);
    return changer.take();
}

}  // namespace grainside::cost
