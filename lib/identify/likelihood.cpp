#include "identify/likelihood.h"

#include <algorithm>
#include <cmath>

#include "measure/alloy_window.h"
#include "measure/blurred_range.h"

namespace grainside::identify {
namespace {

using evidence::Candidate;
using evidence::EvidenceData;
using evidence::LikelihoodBy;
using evidence::Method;
using evidence::OutcomeTable;
using evidence::Reading;

// The scale over which a slip spreads a value evenly. Densities of solids end with osmium, 22.59 g/cm3.
constexpr double kDensityScale = 22.6;
constexpr double kPercentScale = 100;

// A reading by X-ray fluorescence or by spark does not see them, or too badly to count.
const std::vector<std::string> kUnseenElements = {"H", "He", "Li", "Be", "B", "C", "N", "O", "F", "Ne", "Mg"};

// Where a book allows no slips, what a candidate cannot give would rule it out for good, and two such readings would
// leave no candidate at all.
double floored_log(double likelihood) {
    constexpr double kLeast = 1e-12;
    return std::log(std::max(likelihood, kLeast));
}

// How often such a reading is a slip.
double slip_of(const EvidenceData& data, const Method& method) noexcept {
    return data.judging.slip[static_cast<std::size_t>(method.who)];
}

double mixed_with_slip(double log_density, double slip, double scale) {
    return floored_log((1 - slip) * std::exp(log_density) + slip / scale);
}

const evidence::Alloy* alloy_of(const EvidenceData& data, const Candidate& candidate) {
    return candidate.alloy == evidence::kNone ? nullptr : &data.alloys[candidate.alloy];
}

std::vector<double> by_density(const EvidenceData& data, const Method& method, std::size_t frame,
                               const measure::Measured& density) {
    std::vector<double> values;
    for (const Candidate& candidate : data.frames[frame].candidates) {
        const evidence::Alloy* alloy = alloy_of(data, candidate);
        std::optional<double> fit;
        if (alloy != nullptr && alloy->density) fit = measure::log_likelihood(density, *alloy->density);
        // Of an unknown density any value is as likely as any other.
        values.push_back(fit ? mixed_with_slip(*fit, slip_of(data, method) / 2, kDensityScale)
                             : -std::log(kDensityScale));
    }
    return values;
}

// Of an alloy that nobody listed an element is as likely a trace as it is anything.
double of_unknown_alloy(const measure::ElementReading& element) {
    const bool unseen =
        std::find(kUnseenElements.begin(), kUnseenElements.end(), element.symbol) != kUnseenElements.end();
    if (unseen) return 0;
    const std::optional<double> trace =
        measure::log_likelihood(element.percent, {0, measure::AlloyWindow{}.trace_limit});
    return std::log((trace ? std::exp(*trace) : 0) / 2 + 1 / (2 * kPercentScale));
}

std::vector<double> by_composition(const EvidenceData& data, const Method& method, std::size_t frame,
                                   const Reading& reading) {
    std::vector<measure::ElementReading> elements;
    for (const auto& [symbol, percent] : reading.composition) elements.push_back({symbol, percent});
    std::vector<double> values;
    for (const Candidate& candidate : data.frames[frame].candidates) {
        const evidence::Alloy* alloy = alloy_of(data, candidate);
        std::optional<measure::WindowFit> fit;
        if (alloy != nullptr && alloy->window) fit = measure::fit_window(*alloy->window, elements, kUnseenElements);
        double sum = 0;
        if (fit) {
            for (const measure::ElementFit& element : fit->elements) {
                sum += mixed_with_slip(element.log_likelihood, slip_of(data, method) / 2, kPercentScale);
            }
        } else {
            for (const measure::ElementReading& element : elements) sum += of_unknown_alloy(element);
        }
        values.push_back(sum);
    }
    return values;
}

// The other slip: what was measured was another sample, of whatever sort is common.
std::vector<double> with_mix_ups(const EvidenceData& data, const Method& method, std::size_t frame,
                                 std::vector<double> values) {
    const double highest = *std::max_element(values.begin(), values.end());
    double common = 0;
    for (std::size_t i = 0; i < values.size(); ++i) {
        values[i] = std::exp(values[i] - highest);
        common += data.frames[frame].candidates[i].prior * values[i];
    }
    // Half of the slips are of this kind; the other half are in the values already.
    const double slip = slip_of(data, method) / 2;
    for (double& value : values) value = floored_log((1 - slip) * value + slip * common);
    return values;
}

const measure::Measured* quantity_named(const Reading& reading, std::string_view name) {
    for (const evidence::NamedQuantity& quantity : reading.quantities) {
        if (quantity.name == name) return &quantity.measured;
    }
    return nullptr;
}

}  // namespace

const OutcomeTable* table_for(const Method& method, std::size_t frame) noexcept {
    for (const OutcomeTable& table : method.tables) {
        if (table.frame == frame) return &table;
    }
    return nullptr;
}

double outcome_chance(const EvidenceData& data, const Method& method, const OutcomeTable& table, std::size_t candidate,
                      std::size_t outcome) noexcept {
    const std::size_t outcomes = method.outcomes.size();
    const std::vector<Candidate>& candidates = data.frames[table.frame].candidates;
    // Half of the slips are mixed-up samples, half fall anywhere.
    double mixed_up = 0;
    for (std::size_t i = 0; i < candidates.size(); ++i) {
        mixed_up += candidates[i].prior * table.chance[i * outcomes + outcome];
    }
    const double slipped = (mixed_up + 1 / static_cast<double>(outcomes)) / 2;
    return (1 - slip_of(data, method)) * table.chance[candidate * outcomes + outcome] + slip_of(data, method) * slipped;
}

std::vector<double> log_likelihoods(const EvidenceData& data, std::size_t frame, const Reading& reading) {
    const Method& method = data.methods[reading.method];
    const bool asked = std::find(method.frames.begin(), method.frames.end(), frame) != method.frames.end();
    if (asked && method.likelihood_by == LikelihoodBy::density) {
        if (const measure::Measured* density = quantity_named(reading, "density")) {
            return with_mix_ups(data, method, frame, by_density(data, method, frame, *density));
        }
    }
    if (asked && method.likelihood_by == LikelihoodBy::composition && !reading.composition.empty()) {
        return with_mix_ups(data, method, frame, by_composition(data, method, frame, reading));
    }
    std::vector<double> values;
    const OutcomeTable* table = table_for(method, frame);
    if (table == nullptr || reading.outcome == evidence::kNone) return values;
    for (std::size_t i = 0; i < data.frames[frame].candidates.size(); ++i) {
        values.push_back(floored_log(outcome_chance(data, method, *table, i, reading.outcome)));
    }
    return values;
}

}  // namespace grainside::identify
