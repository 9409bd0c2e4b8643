#include "evidence/cost_value.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "document/faults.h"
#include "document/inert_text.h"
#include "evidence/entry_reader.h"
#include "evidence/money_text.h"
#include "evidence/quantity_reader.h"

namespace grainside::evidence {

using measure::Dimension;
using measure::QuantityFault;

static_assert(kNoCostIndex == kNone);

namespace {

constexpr double kMostWorth = 1e9;      // in working units
constexpr double kLeastDivisor = 1e-6;  // the same
constexpr double kMostShare = 500;      // percent
constexpr double kFarOff = 5;           // standard uncertainties
constexpr double kLostInSums = 1e-12;   // of a value, what its arithmetic may lose

struct InputInfo {
    std::string_view key, words;
    Dimension dimension;
};
// In the order of CostInput; the dimension of money is that of its number.
constexpr InputInfo kInputs[] = {
    {"area", "area", Dimension::area},
    {"hides", "number of hides", Dimension::hides},
    {"hide", "area of a hide", Dimension::area},
    {"length", "length", Dimension::length},
    {"width", "width", Dimension::length},
    {"count", "count", Dimension::number},
    {"mass", "mass", Dimension::mass},
    {"time", "time", Dimension::time},
    {"cutting_yield", "cutting yield", Dimension::share},
    {"waste", "waste", Dimension::share},
    {"allowance", "allowance", Dimension::share},
    {"price", "price", Dimension::number},
    {"rate", "rate", Dimension::number},
    {"amount", "amount", Dimension::number},
    {"share", "share", Dimension::share},
    {"rate", "rate", Dimension::share},
    {"exchange", "exchange rate", Dimension::number},
    {"sales_tax", "sales tax", Dimension::share},
    {"multiple", "multiple", Dimension::number},
};
static_assert(std::size(kInputs) == kCostInputCount);

const InputInfo& info_of(CostInput input) {
    return kInputs[static_cast<std::size_t>(input)];
}

QuantityFault fault(std::string_view code, std::string message, std::string hint = {}) {
    return {code, std::move(message), std::move(hint)};
}

// "usual full-grain-yield": the range of the book, because the dossier asks for it.
std::variant<CostValue, QuantityFault> read_usual(CostInput input, std::string_view id, const CostBook& book) {
    const std::string shown = document::inert_text(id);
    if (input == CostInput::duty_rate) {
        const std::size_t at = index_of(book.duties, id);
        if (at == kNone) {
            return fault("unknown-usual", fmt::format("the book has no duty '{}'", shown),
                         document::suggestion(id, ids_of(book.duties)));
        }
        CostValue value;
        value.input = input;
        value.duty = at;
        return value;
    }
    const std::size_t at = index_of(book.usual, id);
    if (at == kNone) {
        std::vector<std::string_view> ids;
        for (const UsualCost& usual : book.usual) {
            if (usual.range.input == input) ids.push_back(usual.id);
        }
        return fault("unknown-usual", fmt::format("the book has no usual range '{}'", shown),
                     document::suggestion(id, ids));
    }
    if (book.usual[at].range.input != input) {
        return fault("wrong-usual",
                     fmt::format("'{}' is usual for the {}, not for the {}", shown,
                                 words_of(book.usual[at].range.input), words_of(input)),
                     "name a range for this value, or write the value");
    }
    CostValue value = book.usual[at].range;
    value.usual = at;
    return value;
}

// Costs have percent alone; a bare number below 1 may be meant as a part of 1.
QuantityFault share_without_percent(const QuantityFault& bare, std::string_view text) {
    const std::string shown = document::inert_text(text);
    QuantityFault told = bare;
    told.hint = fmt::format("write `{} %`", shown);
    const auto read = measure::parse_quantity(text, Dimension::number);
    const auto* const number = std::get_if<measure::ParsedQuantity>(&read);
    if (number != nullptr && number->measured.u == 0 && number->measured.value > 0 && number->measured.value < 1) {
        told.hint += fmt::format(", or `{:g} %` where 1 is all of it", kWhole * number->measured.value);
    }
    return told;
}

std::optional<QuantityFault> out_of_bounds(const CostValue& value, std::string_view text) {
    const std::string shown = '`' + document::inert_text(text) + '`';
    const double low = bounds_of(value).low;
    const double high = bounds_of(value).high;
    // What is divided by stays away from 0 even in a draw that is far off.
    const bool range = value.distribution == measure::Distribution::rectangular;
    const double least =
        (range ? low : value.measured.value - kFarOff * value.measured.u) - kLostInSums * value.measured.value;
    const double most = high + kLostInSums * high;
    if (value.measured.value < 0 || (low < 0 && range)) {
        return fault("negative", fmt::format("{} is less than nothing", shown), "is there a sign too much?");
    }
    // A hundred lines of such values still add up to what a double holds, squared for its variance.
    if (high > kMostWorth)
        return fault("out-of-range", fmt::format("{} is more than any product costs or takes", shown));
    switch (value.input) {
        case CostInput::share:
        case CostInput::duty_rate:
        case CostInput::allowance:
            if (high > kMostShare) {
                return fault("out-of-range", fmt::format("{} is more than {:g} %", shown, kMostShare));
            }
            break;
        case CostInput::hide:
        case CostInput::width:
        case CostInput::exchange:
        case CostInput::multiple:
            if (least < kLeastDivisor) return fault("not-positive", fmt::format("{} may be nothing at all", shown));
            break;
        case CostInput::cutting_yield:
            if (least <= 0) {
                return fault("not-positive", fmt::format("{} may leave nothing of what is bought", shown),
                             "the share of what is bought that ends in the product, as in `65-75 %`");
            }
            [[fallthrough]];
        case CostInput::sales_tax:
            if (high > kWhole) return fault("above-100", fmt::format("{} is more than all of it", shown));
            break;
        case CostInput::waste:
            if (most >= kWhole) {
                return fault("above-100", fmt::format("{} may leave nothing of what is bought", shown),
                             "the share of what is bought that does not end in the product; on top of the net area it "
                             "is `allowance`");
            }
            break;
        default:
            break;
    }
    return std::nullopt;
}

}  // namespace

std::string_view key_of(CostInput input) noexcept {
    return info_of(input).key;
}
std::string words_of(CostInput input) {
    return std::string(info_of(input).words);
}
bool is_money(CostInput input) noexcept {
    return input == CostInput::price || input == CostInput::rate || input == CostInput::amount;
}

std::vector<CostInput> inputs_of(CostGroup group) {
    using enum CostInput;
    switch (group) {
        case CostGroup::duty:
            return {duty_rate, amount};
        case CostGroup::labour:
            return {time, rate, count, price, amount, share};
        default:
            return {area,          hides, hide,      length, width,  count, mass,
                    cutting_yield, waste, allowance, price,  amount, share};
    }
}

CostBounds bounds_of(const CostValue& value) noexcept {
    const bool range = value.distribution == measure::Distribution::rectangular;
    const double half = (range ? std::sqrt(3.0) : measure::kCustomaryCoverage) * value.measured.u;
    // What the root of 3 and back lose is no part of the range.
    const double slack = range ? kLostInSums * std::abs(value.measured.value) : 0;
    return {value.measured.value - half + slack, value.measured.value + half - slack};
}

const CostValue* find_value(const CostEntry& entry, CostInput input) noexcept {
    for (const CostValue& value : entry.values) {
        if (value.input == input) return &value;
    }
    return nullptr;
}

const ExchangeRate* find_exchange(const DossierCosts& costs, std::string_view currency) noexcept {
    for (const ExchangeRate& rate : costs.exchange) {
        if (rate.currency == currency) return &rate;
    }
    return nullptr;
}

std::variant<CostValue, QuantityFault> read_cost_value(CostInput input, std::string_view text, const CostBook& book) {
    constexpr std::string_view kUsual = "usual ";
    if (text.starts_with(kUsual)) {
        std::string_view id = text.substr(kUsual.size());
        while (id.starts_with(' ')) id.remove_prefix(1);
        return read_usual(input, id, book);
    }
    CostValue value;
    value.input = input;
    value.written = text;
    if (is_money(input)) {
        auto read = parse_money(text, book.currencies);
        if (auto* wrong = std::get_if<QuantityFault>(&read)) {
            wrong->code = code_in_documents(wrong->code);
            return std::move(*wrong);
        }
        auto& money = std::get<ParsedMoney>(read);
        value.measured = money.amount.measured;
        value.distribution = money.amount.distribution;
        value.currency = std::move(money.currency);
        value.per = money.per;
        value.per_factor = money.per_factor;
    } else {
        const Dimension dimension = info_of(input).dimension;
        measure::QuantityOrFault read = measure::parse_quantity(text, dimension);
        const auto* const bare = std::get_if<QuantityFault>(&read);
        if (bare != nullptr && bare->code == "missing-unit") {
            // A number of hides is one, as a count is.
            if (input == CostInput::hides) read = measure::parse_quantity(text, Dimension::number);
            if (dimension == Dimension::share) return share_without_percent(*bare, text);
        }
        if (auto* wrong = std::get_if<QuantityFault>(&read)) {
            wrong->code = code_in_documents(wrong->code);
            return std::move(*wrong);
        }
        const auto& quantity = std::get<measure::ParsedQuantity>(read);
        value.measured = quantity.measured;
        value.distribution = quantity.distribution;
    }
    if (auto wrong = out_of_bounds(value, text)) return std::move(*wrong);
    return value;
}

std::variant<CostValue, QuantityFault> read_paid(std::string_view text, const CostBook& book) {
    auto read = read_cost_value(CostInput::amount, text, book);
    if (const auto* paid = std::get_if<CostValue>(&read); paid != nullptr && paid->per) {
        return fault("bad-price", fmt::format("`{}` is paid for a part of something", document::inert_text(text)),
                     "the price of the sample, as in `189.00 USD`");
    }
    return read;
}

}  // namespace grainside::evidence
