// Any text as what people write for a number: quantities, amounts of money, ranges, days, plain numbers, units. What is
// read is finite and means what its header says; what is printed reads back the same; what is no number is told with a
// code and a message that is safe to print. Days and plain numbers are held against the C++ and C libraries.
#include <fmt/format.h>

#include <cerrno>
#include <chrono>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <limits>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "document/document.h"
#include "document/faults.h"
#include "evidence/money_text.h"
#include "evidence/range_text.h"
#include "inert_forms.h"
#include "measure/plain_signs.h"
#include "measure/quantity_text.h"
#include "measure/significant_place.h"
#include "measure/unit.h"

namespace {

using namespace grainside;
using fuzz::require;
using measure::Dimension;
using measure::ParsedQuantity;
using measure::QuantityFault;

// A quantity has at most 400.
constexpr std::size_t kMaxInputBytes = 512;

void check_fault(const QuantityFault& fault) {
    require(!fault.code.empty() && !fault.message.empty());
    fuzz::check_characters(fault.message);
    fuzz::check_characters(fault.hint);
}

void check_parsed(const ParsedQuantity& parsed, Dimension expected) {
    const measure::Measured& measured = parsed.measured;
    require(parsed.dimension == expected && parsed.unit != nullptr && parsed.unit->dimension == expected);
    require(std::isfinite(measured.value) && std::isfinite(measured.u) && measured.u >= 0 && measured.dof > 0);
    require(parsed.states_uncertainty || measured.u == 0);
    require(!parsed.exact || (parsed.states_uncertainty && measured.u == 0));
    require(!parsed.below_detection || (measured.value > 0 && measured.u > 0));
}

// "What is printed reads back the same within the rounding" (quantity_text.h).
void check_printed(const ParsedQuantity& parsed) {
    const measure::UnitInfo& unit = *parsed.unit;
    const double value = measure::from_working(parsed.measured.value, unit);
    const double expanded = measure::kCustomaryCoverage * parsed.measured.u / unit.factor;
    if (!std::isfinite(value) || !std::isfinite(expanded)) return;
    const std::string text = measure::to_text(parsed.measured, unit);
    const auto outcome = measure::parse_quantity(text, parsed.dimension);
    const auto* const again = std::get_if<ParsedQuantity>(&outcome);
    require(again != nullptr && again->unit == &unit);
    const double value_again = measure::from_working(again->measured.value, unit);
    // Of a temperature, the offset is added to both.
    const double exactness = 8 * std::numeric_limits<double>::epsilon() * (std::fabs(value) + std::fabs(unit.offset));
    if (expanded == 0) {
        require(again->measured.u == 0 && std::fabs(value_again - value) <= exactness);
        return;
    }
    // To half of the last place, and what arithmetic on doubles adds.
    const double half = 0.5000001 * std::pow(10.0, measure::significant_place(expanded, 2));
    require(std::fabs(value_again - value) <= half + exactness);
    require(std::fabs(measure::kCustomaryCoverage * again->measured.u / unit.factor - expanded) <= half);
    require(measure::to_text(again->measured, unit) == text);
}

void check_quantities(std::string_view text) {
    for (std::size_t i = 0; i < measure::kDimensionCount; ++i) {
        const auto expected = static_cast<Dimension>(i);
        const auto outcome = measure::parse_quantity(text, expected);
        if (const auto* fault = std::get_if<QuantityFault>(&outcome)) {
            check_fault(*fault);
            continue;
        }
        const auto& parsed = std::get<ParsedQuantity>(outcome);
        check_parsed(parsed, expected);
        check_printed(parsed);
    }
}

void check_money(std::string_view text, std::span<const evidence::Currency> currencies) {
    const auto outcome = evidence::parse_money(text, currencies);
    if (const auto* fault = std::get_if<QuantityFault>(&outcome)) {
        check_fault(*fault);
        return;
    }
    const auto& money = std::get<evidence::ParsedMoney>(outcome);
    require(std::isfinite(money.amount.measured.value) && money.amount.measured.value >= 0);
    require(std::isfinite(money.amount.measured.u) && money.amount.measured.u >= 0);
    require(money.currency.size() == 3 && std::isfinite(money.per_factor) && money.per_factor > 0);
    for (const char c : money.currency) require(c >= 'A' && c <= 'Z');
    require(!currencies.empty() || text.find(money.currency) != std::string_view::npos);
}

void check_range(std::string_view text) {
    const auto read = evidence::parse_range(text);
    if (!read) return;
    require(std::isfinite(read->range.low) && std::isfinite(read->range.high));
    require(read->range.low >= 0 && read->range.high >= 0);
    const std::string unit = read->unit.empty() ? "" : " " + read->unit;
    const auto again =
        evidence::parse_range(fmt::format("{:.400f}-{:.400f}{}", read->range.low, read->range.high, unit));
    require(again && again->range.low == read->range.low && again->range.high == read->range.high);
    require(again->unit == read->unit);
}

void check_signs_and_units(std::string_view text) {
    const auto plain = measure::plain_signs(text);
    if (plain) {
        for (const char c : *plain) require(c >= ' ' && c <= '~');
        require(measure::plain_signs(*plain) == plain);
    }
    if (const measure::UnitInfo* const unit = measure::find_unit(text)) require(measure::find_unit(unit->name) == unit);
}

document::Document scalar_of(std::string_view text) {
    document::NodeRecord record;
    record.text_length = static_cast<std::uint32_t>(text.size());
    record.line = 1;
    record.column = 1;
    record.kind = document::NodeKind::scalar;
    return {"d.yaml", {record}, std::string(text), std::string(text)};
}

bool is_day(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (i != 4 && i != 7 && (text[i] < '0' || text[i] > '9')) return false;
    }
    const std::string copy(text);
    const std::chrono::year_month_day day(
        std::chrono::year(std::atoi(copy.substr(0, 4).c_str())),
        std::chrono::month(static_cast<unsigned>(std::atoi(copy.substr(5, 2).c_str()))),
        std::chrono::day(static_cast<unsigned>(std::atoi(copy.substr(8).c_str()))));
    return copy.substr(0, 4) != "0000" && day.ok();
}

void check_scalars(std::string_view text) {
    const document::Document document = scalar_of(text);
    document::Faults faults;
    require(document::read_date(document, document.root(), faults).has_value() == is_day(text));
    const std::string copy(text);
    errno = 0;
    const long long whole = std::strtoll(copy.c_str(), nullptr, 10);
    const bool is_whole = errno == 0 && (std::to_string(whole) == copy || copy == "-0");
    const auto integer = document::read_integer(document, document.root(), faults);
    require(integer.has_value() == is_whole && (!integer || *integer == whole));
    // What has digits on both sides of its point is a number wherever the whole part is an integer by itself.
    if (const auto number = document::read_number(document, document.root(), faults)) {
        require(*number == std::strtod(copy.c_str(), nullptr) && std::isfinite(*number));
        require(copy.find_first_not_of("-.0123456789") == std::string::npos);
    }
    require(!is_whole || document::read_number(document, document.root(), faults).has_value());
    for (const Issue& issue : faults.take()) require(issue.code == "wrong-type" && issue.line == 1);
}

const std::vector<evidence::Currency>& currencies() {
    static const std::vector<evidence::Currency> few = [] {
        std::vector<evidence::Currency> list(4);
        const char* const ids[] = {"EUR", "USD", "AUD", "JPY"};
        const char* const symbols[] = {"\xE2\x82\xAC", "$", "A$", "\xC2\xA5"};
        for (std::size_t i = 0; i < list.size(); ++i) {
            list[i].id = ids[i];
            list[i].symbol = symbols[i];
        }
        return list;
    }();
    return few;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size > kMaxInputBytes) return 0;
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    check_quantities(text);
    check_money(text, {});
    check_money(text, currencies());
    check_range(text);
    check_signs_and_units(text);
    check_scalars(text);
    return 0;
}
