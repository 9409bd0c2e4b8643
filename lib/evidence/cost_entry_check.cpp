// check_entry and lacking of cost_value.h: which values make a line.
#include <fmt/format.h>

#include <algorithm>
#include <initializer_list>

#include "evidence/cost_value.h"

namespace grainside::evidence {

using enum CostInput;
using measure::Dimension;

namespace {

// What says how much there is of a thing; `count` multiplies the others.
constexpr CostInput kQuantities[] = {area, hides, length, mass, time, count};

std::string key_list(const std::vector<CostInput>& inputs) {
    std::string text;
    for (const CostInput input : inputs) text += fmt::format("{}`{}`", text.empty() ? "" : " and ", key_of(input));
    return text;
}

class EntryCheck {
public:
    EntryCheck(const CostEntry& entry, const DossierCosts& costs, const CostBook& book)
        : entry_(entry), costs_(costs), book_(book) {}

    std::vector<EntryFault> take() {
        check_forms();
        check_units();
        check_currencies();
        check_duty_market();
        return std::move(faults_);
    }

private:
    bool has(CostInput input) const { return find_value(entry_, input) != nullptr; }

    std::vector<CostInput> standing(std::initializer_list<CostInput> inputs) const {
        std::vector<CostInput> found;
        std::copy_if(inputs.begin(), inputs.end(), std::back_inserter(found), [&](CostInput one) { return has(one); });
        return found;
    }

    void fail(std::optional<CostInput> at, std::string_view code, std::string message, std::string hint = {}) {
        faults_.push_back({at, code, std::move(message), std::move(hint)});
    }

    void only_one(std::initializer_list<CostInput> inputs, std::string hint) {
        const std::vector<CostInput> found = standing(inputs);
        if (found.size() > 1) {
            fail(found[1], "both-ways", fmt::format("{} cannot stand together", key_list(found)), std::move(hint));
        }
    }

    // An amount, a share of something, or a quantity at a price.
    void check_forms() {
        if (entry_.values.empty()) {
            fail({}, "missing-key", fmt::format("'{}' says nothing of what it costs", entry_.item),
                 "write an `amount`, a `share` with `of`, or a quantity and its `price`");
            return;
        }
        only_one({area, hides, length, mass, time}, "one of them says how much there is; `count` may multiply it");
        only_one({cutting_yield, waste, allowance}, "each says the same in another way: keep the one that is known");
        for (const CostInput alone : {amount, share, duty_rate}) {
            if (!has(alone) || entry_.values.size() == 1) continue;
            const CostInput other = entry_.values[entry_.values[0].input == alone ? 1 : 0].input;
            if (alone > other && (other == amount || other == share)) continue;  // told once
            fail(other, "both-ways", fmt::format("`{}` cannot stand beside `{}`", key_of(other), key_of(alone)),
                 "write two lines where both are paid");
        }
        if (has(share) && entry_.of.empty()) {
            fail(share, "missing-key", "`share` needs `of`: what it is a share of",
                 "as in `{share: 35 %, of: labour}`");
        }
        const std::vector<CostInput> cut = standing({cutting_yield, waste, allowance});
        if (!cut.empty() && (has(hides) || has(time) || (has(count) && standing({area, length, mass}).empty()))) {
            fail(cut[0], "both-ways", fmt::format("`{}` needs an area, a length or a mass", key_of(cut[0])),
                 "of hides and pieces say how many are bought");
        }
    }

    void check_units() {
        if (const CostValue* value = find_value(entry_, amount); value != nullptr && value->per) {
            fail(amount, "wrong-unit",
                 fmt::format("an amount is plain money, and `{}` is paid for something", value->written),
                 "write how much of it there is, and this as `price`");
        }
        if (const CostValue* value = find_value(entry_, rate); value != nullptr && value->per != Dimension::time) {
            fail(rate, "wrong-unit", fmt::format("`{}` is no rate for work", value->written),
                 "write it as in `14-18 EUR/h`");
        }
        if (has(time) && has(price)) {
            fail(price, "wrong-unit", "work is paid by its `rate`", "write `rate: 14-18 EUR/h`");
        }
        const CostValue* const value = find_value(entry_, price);
        if (value != nullptr) check_price(*value);
        if (has(width) && (value == nullptr || value->per != Dimension::length || !has(area))) {
            fail(width, "both-ways", "`width` is for an area at a price per length of goods",
                 "as in `{area: 0.55 m2, price: 9.40 EUR/m, width: 140 cm}`");
        }
        // A price that is missing yet may turn out to need it.
        const bool open = value == nullptr && (has(area) || has(hides));
        if (has(hide) && !open && !converts_by_hide(entry_)) {
            fail(hide, "both-ways", "`hide` is for an area at a price per hide, or for hides at a price per area",
                 "as in `{area: 6 sq ft, price: 240 EUR/hide, hide: 48 sq ft}`; leave it out where both are counted "
                 "alike");
        }
    }

    void check_price(const CostValue& value) {
        const Dimension per = value.per.value_or(Dimension::number);
        const auto wrong = [&](std::string_view what) {
            fail(price, "wrong-unit", fmt::format("`{}` does not fit `{}`", value.written, what),
                 "the price is paid for the unit of what is counted, as in `area: 6 sq ft, price: 5 EUR/sq ft`");
        };
        const auto needs = [&](CostInput other, std::string_view why) {
            if (!has(other))
                fail(price, "missing-key", fmt::format("`{}` needs `{}`", value.written, key_of(other)),
                     std::string(why));
        };
        if (has(area)) {
            if (per == Dimension::hides) needs(hide, "the area of one hide, as in `hide: 45-50 sq ft`");
            if (per == Dimension::length) needs(width, "how wide the goods are, as in `width: 140 cm`");
            if (per == Dimension::number || per == Dimension::mass || per == Dimension::time) wrong("area");
        } else if (has(hides)) {
            if (per == Dimension::area) needs(hide, "the area of one hide, as in `hide: 45-50 sq ft`");
            if (per != Dimension::area && per != Dimension::hides) wrong("hides");
        } else if (has(length)) {
            if (per != Dimension::length) wrong("length");
        } else if (has(mass)) {
            if (per != Dimension::mass) wrong("mass");
        } else if (has(count)) {
            if (per != Dimension::number) wrong("count");
        }
    }

    void check_currencies() {
        for (const CostValue& value : entry_.values) {
            if (!value.currency.empty()) needs_exchange(value.input, value.currency);
            if (value.duty != kNoCostIndex && !book_.duties[value.duty].currency.empty()) {
                needs_exchange(value.input, book_.duties[value.duty].currency);
            }
        }
    }

    // A rate of one market says nothing of another; where nothing tells the market, the dossier's word counts.
    void check_duty_market() {
        const CostValue* const value = find_value(entry_, duty_rate);
        if (value == nullptr || value->duty == kNoCostIndex || costs_.reach.empty()) return;
        const auto holds = [&](const Duty& duty) {
            return std::find(costs_.reach.begin(), costs_.reach.end(), duty.market) != costs_.reach.end();
        };
        const Duty& duty = book_.duties[value->duty];
        if (holds(duty)) return;
        std::string fitting;
        for (const Duty& one : book_.duties) {
            if (holds(one)) fitting += (fitting.empty() ? "" : ", ") + one.id;
        }
        fail(duty_rate, "wrong-market",
             fmt::format("'{}' is a duty of the market '{}', and the product is sold in '{}'", duty.id, duty.market,
                         costs_.market),
             fitting.empty() ? std::string("write the rate itself, as in `rate: 3 %`")
                             : fmt::format("one of {}, or the market as `sold_in`", fitting));
    }

    void needs_exchange(CostInput at, const std::string& currency) {
        if (costs_.currency.empty() || currency == costs_.currency || find_exchange(costs_, currency) != nullptr)
            return;
        fail(at, "missing-exchange", fmt::format("{} cannot be added to {} without a rate", currency, costs_.currency),
             fmt::format("say what one is worth: `exchange: {{{}: 0.95-1.05}}`, with the rate of the day", currency));
    }

    const CostEntry& entry_;
    const DossierCosts& costs_;
    const CostBook& book_;
    std::vector<EntryFault> faults_;
};

}  // namespace

std::vector<EntryFault> check_entry(const CostEntry& entry, const DossierCosts& costs, const CostBook& book) {
    return EntryCheck(entry, costs, book).take();
}

bool converts_by_hide(const CostEntry& entry) noexcept {
    const CostValue* const paid = find_value(entry, price);
    if (paid == nullptr) return false;
    if (find_value(entry, area) != nullptr) return paid->per == Dimension::hides;
    return find_value(entry, hides) != nullptr && paid->per == Dimension::area;
}

std::vector<CostInput> lacking(const CostEntry& entry) {
    const auto has = [&](CostInput input) { return find_value(entry, input) != nullptr; };
    if (has(amount) || has(share) || has(duty_rate)) return {};
    std::vector<CostInput> lacks;
    if (has(time)) {
        if (!has(rate)) lacks.push_back(rate);
        return lacks;
    }
    if (has(rate)) return {time};
    const bool any = std::any_of(std::begin(kQuantities), std::end(kQuantities), has);
    const CostValue* const paid = find_value(entry, price);
    if (!any) {
        const Dimension per = paid == nullptr ? Dimension::area : paid->per.value_or(Dimension::number);
        lacks.push_back(per == Dimension::number   ? count
                        : per == Dimension::mass   ? mass
                        : per == Dimension::hides  ? hides
                        : per == Dimension::length ? length
                                                   : area);
    }
    const bool by_area = has(area) || (!lacks.empty() && lacks[0] == area);
    if (by_area && !has(cutting_yield) && !has(waste) && !has(allowance)) lacks.push_back(cutting_yield);
    if (paid == nullptr) lacks.push_back(price);
    return lacks;
}

}  // namespace grainside::evidence
