#include "report/cost_facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <variant>

#include "measure/quantity_text.h"

namespace grainside::report {

std::vector<std::uint32_t> cost_sources(const CostEstimate& cost) {
    std::vector<std::uint32_t> sources;
    const auto add = [&](const std::vector<std::uint32_t>& some) {
        for (const std::uint32_t one : some) {
            if (std::find(sources.begin(), sources.end(), one) == sources.end()) sources.push_back(one);
        }
    };
    for (const CostLine& line : cost.lines) {
        for (const UsualRange& usual : line.usual) add(usual.sources);
    }
    add(cost.duty_sources);
    if (cost.multiple) {
        for (const UsualRange& usual : cost.usual_multiples) add(usual.sources);
    }
    for (const CostGap& gap : cost.gaps) {
        for (const UsualRange& usual : gap.usual) add(usual.sources);
    }
    for (const UnusualCost& one : cost.unusual) add(one.usual.sources);
    return sources;
}

std::vector<MultipleBand> usual_bands(const CostEstimate& cost) {
    std::vector<MultipleBand> bands;
    for (const UsualRange& usual : cost.usual_multiples) {
        const measure::QuantityOrFault read = measure::parse_quantity(usual.range, measure::Dimension::number);
        const auto* const range = std::get_if<measure::ParsedQuantity>(&read);
        if (range == nullptr) continue;
        // A range is rectangular: its half width is u times the root of 3 (JCGM 100:2008, 4.3.7).
        const double half = range->measured.u * std::sqrt(3.0);
        bands.push_back({usual.title, range->measured.value - half, range->measured.value + half});
    }
    return bands;
}

std::vector<CostStep> steps_of(const CostEstimate& cost) {
    std::vector<CostStep> steps;
    double sum = 0;
    const auto any = [&](CostGroup first, CostGroup last) {
        return std::any_of(cost.lines.begin(), cost.lines.end(),
                           [&](const CostLine& line) { return line.group >= first && line.group <= last; });
    };
    const auto add_sum = [&](std::string_view text, const CostAmount& amount) {
        steps.push_back({std::string(text), nullptr, amount, 0});
    };
    for (std::size_t i = 0; i < cost.lines.size(); ++i) {
        const CostLine& line = cost.lines[i];
        const std::string text = line.part.empty() ? line.item : fmt::format("{} ({})", line.item, line.part);
        steps.push_back({text, &line, line.amount, sum});
        sum += line.amount.value;
        if (i + 1 == cost.lines.size()) break;
        const CostGroup next = cost.lines[i + 1].group;
        const auto ends = [&](CostGroup last) { return line.group <= last && next > last; };
        if (ends(CostGroup::hardware)) add_sum("materials and hardware", cost.materials);
        if (ends(CostGroup::packing) && any(CostGroup::labour, CostGroup::packing)) add_sum("to make", cost.making);
        if (ends(CostGroup::margin) && any(CostGroup::margin, CostGroup::margin)) {
            add_sum("maker's price", cost.maker_price);
        }
    }
    if (!steps.empty()) add_sum("total", cost.total);
    return steps;
}

}  // namespace grainside::report
