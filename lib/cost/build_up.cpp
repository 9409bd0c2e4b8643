#include "cost/build_up.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "evidence/cost_value.h"

namespace grainside::cost {

using evidence::CostEntry;
using evidence::CostInput;
using evidence::CostValue;
using evidence::find_value;

namespace {

constexpr double kPercent = 0.01;
// The least that a yield counts as, and what is left after the most waste; far from anything that is cut.
constexpr double kLeastKept = 0.001;
constexpr double kLeastDivisor = 1e-9;
constexpr double kSquareMillimetres = 10'000;  // in a square decimetre

std::size_t index(CostGroup group) {
    return static_cast<std::size_t>(group);
}

}  // namespace

double BuildUp::applied(Op op, double factor, double value) noexcept {
    switch (op) {
        case Op::times:
            return factor * std::max(value, 0.0);
        case Op::divide:
            return factor / std::max(value, kLeastDivisor);
        case Op::share:
            return factor * std::max(value * kPercent, 0.0);
        case Op::per_yield:
            return factor / std::clamp(value * kPercent, kLeastKept, 1.0);
        case Op::per_kept:
            return factor / std::clamp(1 - value * kPercent, kLeastKept, 1.0);
        case Op::with_allowance:
            return factor * std::max(1 + value * kPercent, 1.0);
        case Op::without_tax:
            return factor / std::max(1 + value * kPercent, 1.0);
    }
    return factor;
}

void BuildUp::multiply(Line& line, Op op, const CostValue& value, const std::string& item, std::size_t entry) {
    if (value.measured.u == 0) {
        line.constant = applied(op, line.constant, value.measured.value);
        return;
    }
    if (value.same_as != evidence::kNoCostIndex) {
        const auto shared = std::find_if(inputs_.begin(), inputs_.end(), [&](const BuildInput& input) {
            return input.entry == value.same_as && input.of == value.input;
        });
        if (shared != inputs_.end()) {
            line.factors.push_back({op, static_cast<std::uint32_t>(shared - inputs_.begin())});
            return;
        }
        // The other line has no amount, so that this one is the first to draw it.
        entry = value.same_as;
    }
    line.factors.push_back({op, static_cast<std::uint32_t>(inputs_.size())});
    inputs_.push_back(
        {item, evidence::words_of(value.input), {value.measured, value.distribution}, entry, value.input});
}

std::uint32_t BuildUp::exchange_input(const evidence::ExchangeRate& rate) {
    auto& known = exchange_inputs_[static_cast<std::size_t>(&rate - costs_.exchange.data())];
    if (!known) {
        known = static_cast<std::uint32_t>(inputs_.size());
        inputs_.push_back({rate.currency,
                           evidence::words_of(CostInput::exchange),
                           {rate.worth.measured, rate.worth.distribution},
                           evidence::kNoCostIndex,
                           CostInput::exchange});
    }
    return *known;
}

void BuildUp::convert(Line& line, const std::string& currency) {
    if (currency.empty() || currency == costs_.currency) return;
    const evidence::ExchangeRate* const rate = evidence::find_exchange(costs_, currency);
    if (rate == nullptr) {
        line.complete = false;
    } else if (rate->worth.measured.u == 0) {
        line.constant *= rate->worth.measured.value;
    } else {
        line.factors.push_back({Op::times, exchange_input(*rate)});
    }
}

BuildUp::Range BuildUp::up_to(CostGroup last) const noexcept {
    return {0, group_end_[index(last)]};
}

// Quantity by price, with what is bought but does not end in the product.
void BuildUp::add_quantity(const CostEntry& entry, Line& line) {
    const auto take = [&](CostInput input, Op op) {
        const CostValue* const value = find_value(entry, input);
        if (value != nullptr) multiply(line, op, *value, entry.item, lines_.size());
        return value != nullptr;
    };
    take(CostInput::area, Op::times);
    take(CostInput::hides, Op::times);
    take(CostInput::length, Op::times);
    take(CostInput::mass, Op::times);
    take(CostInput::time, Op::times);
    take(CostInput::count, Op::times);
    take(CostInput::cutting_yield, Op::per_yield);
    take(CostInput::waste, Op::per_kept);
    take(CostInput::allowance, Op::with_allowance);
    if (take(CostInput::width, Op::divide)) line.constant *= kSquareMillimetres;
    // Of an area so many hides are bought; of hides at a price per area, so much area.
    if (evidence::converts_by_hide(entry)) {
        take(CostInput::hide, find_value(entry, CostInput::area) != nullptr ? Op::divide : Op::times);
    }
    for (const CostInput paid : {CostInput::price, CostInput::rate}) {
        if (!take(paid, Op::times)) continue;
        convert(line, find_value(entry, paid)->currency);
    }
}

void BuildUp::add_line(const CostEntry& entry) {
    Line line;
    const std::vector<CostInput> lacks = evidence::lacking(entry);
    line.complete = lacks.empty() || lacks == std::vector<CostInput>{CostInput::cutting_yield};
    if (!line.complete) {
        lines_.push_back(std::move(line));
        return;
    }
    if (const CostValue* const paid = find_value(entry, CostInput::amount)) {
        multiply(line, Op::times, *paid, entry.item, lines_.size());
        convert(line, paid->currency);
    } else if (const CostValue* const share = find_value(entry, CostInput::share)) {
        multiply(line, Op::share, *share, entry.item, lines_.size());
        for (const evidence::ShareBase& base : entry.of) {
            switch (base.kind) {
                case evidence::ShareBase::Kind::group:
                    line.bases.push_back({base.group == CostGroup{} ? 0 : group_end_[index(base.group) - 1],
                                          group_end_[index(base.group)]});
                    break;
                case evidence::ShareBase::Kind::sum:
                    line.bases.push_back(up_to(base.sum == evidence::CostSum::making        ? CostGroup::packing
                                               : base.sum == evidence::CostSum::maker_price ? CostGroup::margin
                                                                                            : CostGroup::insurance));
                    break;
                case evidence::ShareBase::Kind::entry:
                    line.bases.push_back({base.entry, base.entry + 1});
                    break;
            }
        }
    } else if (const CostValue* const rate = find_value(entry, CostInput::duty_rate)) {
        line.bases.push_back(
            up_to(entry.duty_base == evidence::DutyBase::maker_price ? CostGroup::margin : CostGroup::insurance));
        if (rate->duty == evidence::kNoCostIndex) {
            multiply(line, Op::share, *rate, entry.item, lines_.size());
        } else {
            line.duty = &book_.duties[rate->duty];
            const evidence::ExchangeRate* const worth = evidence::find_exchange(costs_, line.duty->currency);
            if (worth != nullptr && worth->worth.measured.u > 0) line.duty_exchange = exchange_input(*worth);
            if (worth != nullptr) line.duty_unit = worth->worth.measured.value;
        }
    } else {
        add_quantity(entry, line);
    }
    lines_.push_back(std::move(line));
}

void BuildUp::add_net(const CostValue& paid) {
    net_.complete = true;
    const std::string item = "price paid";
    multiply(net_, Op::times, paid, item, evidence::kNoCostIndex);
    convert(net_, paid.currency);
    if (costs_.sales_tax) multiply(net_, Op::without_tax, *costs_.sales_tax, item, evidence::kNoCostIndex);
}

BuildUp::BuildUp(const evidence::CostBook& book, const evidence::DossierCosts& costs,
                 const std::optional<CostValue>& paid)
    : book_(book), costs_(costs), exchange_inputs_(costs.exchange.size()) {
    for (std::size_t g = 0; g < evidence::kCostGroupCount; ++g) {
        group_end_[g] =
            static_cast<std::size_t>(std::count_if(costs.entries.begin(), costs.entries.end(),
                                                   [&](const CostEntry& entry) { return index(entry.group) <= g; }));
    }
    for (const CostEntry& entry : costs.entries) add_line(entry);
    if (paid) add_net(*paid);
    // The rates of steps at the best estimates, each from the lines before it.
    const std::vector<double> at = best();
    std::vector<double> amounts(lines_.size(), 0);
    for (std::size_t i = 0; i < lines_.size(); ++i) {
        amounts[i] = amount(lines_[i], at, amounts, false);
        double base = 0;
        for (const Range& range : lines_[i].bases) {
            for (std::size_t j = range.first; j < range.last; ++j) base += amounts[j];
        }
        if (lines_[i].duty != nullptr && base > 0) lines_[i].frozen_rate = amounts[i] / base / kPercent;
    }
}

double BuildUp::product(const Line& line, std::span<const double> at) const noexcept {
    double result = line.constant;
    for (const Factor& factor : line.factors) result = applied(factor.op, result, at[factor.input]);
    return result;
}

double BuildUp::amount(const Line& line, std::span<const double> at, std::span<const double> amounts,
                       bool frozen) const noexcept {
    if (!line.complete) return 0;
    double result = product(line, at);
    if (line.bases.empty()) return result;
    double base = 0;
    for (const Range& range : line.bases) {
        for (std::size_t i = range.first; i < range.last; ++i) base += amounts[i];
    }
    if (line.duty == nullptr) return result * base;
    if (frozen) return base * line.frozen_rate * kPercent;
    const double unit = line.duty_exchange ? std::max(at[*line.duty_exchange], kLeastDivisor) : line.duty_unit;
    for (const evidence::DutyBracket& bracket : line.duty->brackets) {
        if (!bracket.up_to || base / unit <= *bracket.up_to) return base * bracket.rate * kPercent;
    }
    return 0;  // the last bracket is open
}

double BuildUp::evaluate(const Output& output, std::span<const double> at, std::span<double> amounts,
                         bool frozen) const noexcept {
    if (output.kind == Output::Kind::line && lines_[output.line].bases.empty()) {
        return amount(lines_[output.line], at, amounts, frozen);
    }
    const std::size_t end = output.kind == Output::Kind::line  ? output.line + 1
                            : output.kind == Output::Kind::sum ? group_end_[index(output.last)]
                                                               : lines_.size();
    double sum = 0;
    for (std::size_t i = 0; i < end; ++i) {
        amounts[i] = amount(lines_[i], at, amounts, frozen);
        sum += amounts[i];
    }
    if (output.kind == Output::Kind::line) return amounts[output.line];
    if (output.kind == Output::Kind::sum) return sum;
    return product(net_, at) / std::max(sum, kLeastDivisor);
}

std::vector<double> BuildUp::best() const {
    std::vector<double> at;
    at.reserve(inputs_.size());
    for (const BuildInput& input : inputs_) at.push_back(input.draw.measured.value);
    return at;
}

measure::Model BuildUp::model(const Output& output, bool frozen) const {
    return [this, output, frozen, amounts = std::vector<double>(lines_.size())](std::span<const double> at) mutable {
        return evaluate(output, at, amounts, frozen);
    };
}

double BuildUp::at_best(const Output& output) const {
    std::vector<double> amounts(lines_.size());
    return evaluate(output, best(), amounts, false);
}

double BuildUp::net_at_best() const {
    return product(net_, best());
}

measure::Model BuildUp::model_of(const Output& output, std::vector<std::size_t> used) const {
    return [this, output, used = std::move(used), all = best(),
            amounts = std::vector<double>(lines_.size())](std::span<const double> at) mutable {
        for (std::size_t i = 0; i < used.size(); ++i) all[used[i]] = at[i];
        return evaluate(output, all, amounts, false);
    };
}

std::vector<std::size_t> BuildUp::inputs_of(const Output& output) const {
    std::vector<bool> used(inputs_.size());
    std::vector<bool> lines(lines_.size());
    if (output.kind == Output::Kind::line) {
        lines[output.line] = true;
    } else {
        const Range range = output.kind == Output::Kind::sum ? up_to(output.last) : Range{0, lines_.size()};
        std::fill(lines.begin(), lines.begin() + static_cast<std::ptrdiff_t>(range.last), true);
    }
    const auto use = [&](const Line& line) {
        for (const Factor& factor : line.factors) used[factor.input] = true;
        if (line.duty_exchange) used[*line.duty_exchange] = true;
    };
    // Bases come before what is a share of them.
    for (std::size_t i = lines_.size(); i-- > 0;) {
        if (!lines[i]) continue;
        use(lines_[i]);
        for (const Range& range : lines_[i].bases) {
            for (std::size_t j = range.first; j < range.last; ++j) lines[j] = true;
        }
    }
    if (output.kind == Output::Kind::multiple) use(net_);
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < used.size(); ++i) {
        if (used[i]) found.push_back(i);
    }
    return found;
}

std::optional<BuildUp::Scaled> BuildUp::scaled_input(std::size_t line) const {
    const Line& asked = lines_[line];
    if (!asked.complete || !asked.bases.empty() || asked.factors.size() != 1) return std::nullopt;
    if (asked.factors[0].op != Op::times) return std::nullopt;
    return Scaled{asked.factors[0].input, asked.constant};
}

}  // namespace grainside::cost
