#include "evidence/quantity_reader.h"

#include <fmt/format.h>

#include <cstddef>
#include <string_view>

#include "measure/unit.h"

namespace grainside::evidence {

using document::Node;
using measure::Dimension;

namespace {

// An example in the dimension's working unit.
std::string how_to_write(Dimension dimension) {
    const std::string_view name = measure::working_unit(dimension).name;
    const std::string unit = name.empty() ? std::string() : fmt::format(" {}", name);
    return fmt::format(
        "write `0.21 \xC2\xB1 0.02{0}` (k = 2), three repeats or more as in `0.20, 0.22, 0.21{0}`, "
        "a range `0.19-0.23{0}`, or `exactly 0.2{0}`",
        unit);
}

}  // namespace

std::string_view code_in_documents(std::string_view code) noexcept {
    return code == "empty" || code == "too-long" || code == "malformed" ? "bad-quantity" : code;
}

std::optional<measure::ParsedQuantity> read_quantity(const EntryReader& reader, Node node, Dimension expected) {
    if (!node.is_scalar()) {
        reader.error(node, "wrong-type", "expected a quantity", how_to_write(expected));
        return std::nullopt;
    }
    const measure::QuantityOrFault read = measure::parse_quantity(node.text(), expected);
    if (const auto* quantity = std::get_if<measure::ParsedQuantity>(&read)) return *quantity;
    const auto& fault = std::get<measure::QuantityFault>(read);
    // A unit stands behind a number.
    if (const std::size_t space = node.text().rfind(' '); space != std::string_view::npos) {
        reader.faults().met(node.text().substr(space + 1), measure::unit_names(expected));
    }
    reader.error(node, code_in_documents(fault.code), fault.message,
                 fault.hint.empty() ? how_to_write(expected) : fault.hint);
    return std::nullopt;
}

std::optional<measure::Measured> read_signed(const EntryReader& reader, Node node, Dimension expected) {
    const std::optional<measure::ParsedQuantity> quantity = read_quantity(reader, node, expected);
    if (!quantity) return std::nullopt;
    if (!quantity->states_uncertainty && !quantity->exact) {
        reader.error(node, "no-uncertainty", fmt::format("'{}' says nothing of its uncertainty", node.text()),
                     how_to_write(expected));
        return std::nullopt;
    }
    return quantity->measured;
}

std::optional<measure::Measured> read_measured(const EntryReader& reader, Node node, Dimension expected) {
    const std::optional<measure::Measured> measured = read_signed(reader, node, expected);
    if (!measured) return std::nullopt;
    if (expected != Dimension::temperature && measured->value < 0) {
        reader.error(node, "negative", fmt::format("a {} is not negative", measure::name_of(expected)),
                     expected == Dimension::share
                         ? "what was not found is written `< 0.005 %`, with the least that shows"
                         : "is there a sign too much?");
        return std::nullopt;
    }
    if (expected == Dimension::share && measured->value > kWhole) {
        reader.error(node, "above-100", "a share is at most 100 %", "is the decimal point right?");
        return std::nullopt;
    }
    return measured;
}

std::optional<measure::ParsedQuantity> read_bound(const EntryReader& reader, Node node, Dimension expected) {
    std::optional<measure::ParsedQuantity> quantity = read_quantity(reader, node, expected);
    if (!quantity) return std::nullopt;
    if (quantity->states_uncertainty || quantity->below_detection || quantity->measured.u > 0) {
        reader.error(node, "bad-bound", fmt::format("'{}' is no single number", node.text()),
                     "a bound is a number with its unit, as in `0.15 mm`");
        return std::nullopt;
    }
    return quantity;
}

std::optional<measure::Limit> read_interval(const EntryReader& reader, Node node, Dimension dimension,
                                            std::string& unit) {
    if (!reader.check_keys(node, {"above", "at_least", "below", "at_most"})) return std::nullopt;
    measure::Limit limit;
    bool sound = true;
    const auto read = [&](std::string_view key, std::optional<double>& end, bool& inclusive) {
        const Node bound = node.find(key);
        if (!bound.exists()) return;
        const auto value = read_bound(reader, bound, dimension);
        if (!value) {
            sound = false;
            return;
        }
        if (end) {
            reader.error(bound, "bad-bound", "two bounds on one side", "keep the one that is meant");
            sound = false;
        }
        end = value->measured.value;
        inclusive = key.starts_with("at_");
        unit = value->unit->name;
    };
    read("above", limit.lower, limit.lower_inclusive);
    read("at_least", limit.lower, limit.lower_inclusive);
    read("below", limit.upper, limit.upper_inclusive);
    read("at_most", limit.upper, limit.upper_inclusive);
    if (!sound) return std::nullopt;
    if (!limit.lower && !limit.upper) {
        reader.error(node, "missing-key", "a bound needs `above`, `at_least`, `below` or `at_most`");
        return std::nullopt;
    }
    const bool both_included = limit.lower_inclusive && limit.upper_inclusive;
    if (limit.lower && limit.upper &&
        (*limit.lower > *limit.upper || (*limit.lower == *limit.upper && !both_included))) {
        reader.error(node, "bad-bound", "no value lies between these bounds");
        return std::nullopt;
    }
    return limit;
}

}  // namespace grainside::evidence
