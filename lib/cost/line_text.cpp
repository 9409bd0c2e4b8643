#include "cost/line_text.h"

#include <fmt/format.h>

#include "evidence/cost_value.h"

namespace grainside::cost {

using evidence::CostInput;
using evidence::CostValue;
using evidence::find_value;

namespace {

std::string rates_text(const evidence::Duty& duty) {
    std::string text;
    for (const evidence::DutyBracket& bracket : duty.brackets) {
        if (!text.empty()) text += ", ";
        text += fmt::format("{:g} %", bracket.rate);
        if (bracket.up_to) {
            text += fmt::format(" up to {:g} {}", *bracket.up_to, duty.currency);
        } else if (duty.brackets.size() > 1) {
            text += " above";
        }
    }
    return text;
}

std::string value_text(const CostValue& value) {
    if (value.usual != evidence::kNoCostIndex) return value.written + " (usual)";
    return value.same_as == evidence::kNoCostIndex ? value.written : value.written + " (the same)";
}

}  // namespace

std::string words_of(evidence::DutyBase base) {
    return base == evidence::DutyBase::maker_price ? "maker's price" : "maker's price, freight and insurance";
}

std::string basis_of(const evidence::CostEntry& entry, const evidence::CostBook& book) {
    if (const CostValue* const amount = find_value(entry, CostInput::amount)) return value_text(*amount);
    if (const CostValue* const rate = find_value(entry, CostInput::duty_rate)) {
        const std::string rates =
            rate->duty == evidence::kNoCostIndex ? value_text(*rate) : rates_text(book.duties[rate->duty]);
        return fmt::format("{} of {}", rates, words_of(entry.duty_base));
    }
    if (const CostValue* const share = find_value(entry, CostInput::share)) {
        std::string text = value_text(*share) + " of ";
        for (std::size_t i = 0; i < entry.of.size(); ++i) {
            if (i > 0) text += i + 1 == entry.of.size() ? " and " : ", ";
            const evidence::ShareBase& base = entry.of[i];
            const bool maker = base.sum == evidence::CostSum::maker_price;
            if (base.kind != evidence::ShareBase::Kind::sum || base.sum == evidence::CostSum::making) {
                text += base.name;
            } else {
                text += words_of(maker ? evidence::DutyBase::maker_price : evidence::DutyBase::with_freight);
            }
        }
        return text;
    }
    std::string text;
    for (const CostInput input :
         {CostInput::area, CostInput::hides, CostInput::length, CostInput::mass, CostInput::time, CostInput::count}) {
        const CostValue* const value = find_value(entry, input);
        if (value == nullptr) continue;
        if (!text.empty()) text += ", times ";
        text += value_text(*value);
    }
    for (const CostInput paid : {CostInput::price, CostInput::rate}) {
        const CostValue* const value = find_value(entry, paid);
        if (value != nullptr) text += (text.empty() ? "" : " at ") + value_text(*value);
    }
    if (const CostValue* const hide = find_value(entry, CostInput::hide)) text += ", a hide " + value_text(*hide);
    if (const CostValue* const width = find_value(entry, CostInput::width)) text += ", width " + value_text(*width);
    for (const CostInput cut : {CostInput::cutting_yield, CostInput::waste, CostInput::allowance}) {
        const CostValue* const value = find_value(entry, cut);
        if (value != nullptr) text += fmt::format(", {} {}", evidence::words_of(cut), value_text(*value));
    }
    return text;
}

UsualRange usual_range(const evidence::UsualCost& usual) {
    return {usual.id, usual.title, usual.range.written, usual.sources};
}
UsualRange usual_range(const evidence::Duty& duty) {
    return {duty.id, duty.title, rates_text(duty), duty.sources};
}

}  // namespace grainside::cost
