#include "evidence/quantity_names.h"

#include <algorithm>

#include "evidence/elements.h"

namespace grainside::evidence {

using measure::Dimension;

namespace {

constexpr ComputedQuantity kDensity[] = {{"density", Dimension::density}};
constexpr ComputedQuantity kCoatShare[] = {{"coat-share", Dimension::share}};
constexpr ComputedQuantity kColourChange[] = {{"colour-change", Dimension::number}, {"grey-scale", Dimension::number}};

// What stands behind "NAME." in `quantity`; nothing where it does not begin so.
std::optional<std::string_view> member_of(std::string_view quantity, std::string_view name) {
    if (!quantity.starts_with(name) || quantity.substr(name.size(), 1) != ".") return std::nullopt;
    return quantity.substr(name.size() + 1);
}

bool is_read(std::string_view name, const EvidenceData& data) {
    return std::any_of(data.methods.begin(), data.methods.end(),
                       [name](const Method& method) { return reads(method, name); });
}

}  // namespace

std::span<const ComputedQuantity> computed_by(Computes what) noexcept {
    switch (what) {
        case Computes::nothing:
            return {};
        case Computes::density:
            return kDensity;
        case Computes::coat_share:
            return kCoatShare;
        case Computes::colour_change:
            return kColourChange;
    }
    return {};
}

std::vector<std::string> elements_of(std::string_view quantity) {
    std::vector<std::string> elements;
    std::optional<std::string_view> rest = member_of(quantity, kContent);
    while (rest) {
        const std::size_t plus = rest->find('+');
        elements.emplace_back(rest->substr(0, plus));
        if (plus == std::string_view::npos) break;
        rest = rest->substr(plus + 1);
    }
    return elements;
}

bool reads(const Method& method, std::string_view quantity) noexcept {
    return std::any_of(method.reads.begin(), method.reads.end(),
                       [quantity](const QuantityRead& one) { return one.name == quantity; });
}

std::optional<Dimension> dimension_of(std::string_view quantity, const EvidenceData& data,
                                      const vocabulary::ConceptTree& concepts) {
    if (const std::vector<std::string> elements = elements_of(quantity); !elements.empty()) {
        if (!is_read(kContent, data) || !std::all_of(elements.begin(), elements.end(), is_element)) return std::nullopt;
        return Dimension::share;
    }
    if (const auto fibre = member_of(quantity, kFibreShare)) {
        if (!is_read(kFibreShare, data) || concepts.find(*fibre) == 0) return std::nullopt;
        return Dimension::share;
    }
    for (const Method& method : data.methods) {
        for (const QuantityRead& one : method.reads) {
            if (one.name == quantity && one.unit != kColourUnit) return one.dimension;
        }
        for (const ComputedQuantity& one : computed_by(method.computes)) {
            if (one.name == quantity) return one.dimension;
        }
    }
    return std::nullopt;
}

std::vector<std::string_view> quantity_names(const EvidenceData& data) {
    std::vector<std::string_view> names;
    const auto add = [&](std::string_view name) {
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    };
    for (const Method& method : data.methods) {
        for (const QuantityRead& one : method.reads) {
            if (one.unit != kColourUnit) add(one.name);
        }
        for (const ComputedQuantity& one : computed_by(method.computes)) add(one.name);
    }
    return names;
}

}  // namespace grainside::evidence
