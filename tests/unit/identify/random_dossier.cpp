#include "random_dossier.h"

#include <algorithm>
#include <string_view>
#include <vector>

#include "support/built_in_evidence.h"

namespace grainside::support {
namespace {

using evidence::Computes;
using evidence::EvidenceData;
using evidence::LikelihoodBy;
using evidence::Method;

const EvidenceData& data() {
    return built_in_evidence().data();
}

constexpr std::string_view kElements[] = {"Zn", "Cu", "Al", "Fe", "Pb", "Ni", "Cr", "Mo", "Mn", "Sn", "Ag", "Au"};

constexpr std::string_view kSentences[] = {
    "Full grain leather tote.",
    "Genuine leather.",
    "Made of top grain nappa leather.",
    "Vegan leather (PU).",
    "Calf leather, vegetable-tanned.",
    "Solid brass hardware.",
    "Hardware: 316L stainless steel.",
    "Gold-plated hardware.",
    "Lining: 100% cotton.",
    "Polyester lining.",
    "Waterproof.",
    "Water-resistant.",
    "Nickel-free and lead-free hardware.",
    "Not real leather.",
    "Coated leather.",
    "Leather 1.2 mm thick.",
    "Chrome-free tanned.",
    "Tarnish-resistant hardware.",
    "Scratch-resistant.",
    "Fade-resistant.",
    "Aniline leather.",
    "Suede.",
    "Zinc alloy hardware.",
    "PVC-free.",
    "Vegan.",
    "Premium quality.",
};

std::vector<std::size_t> methods_for(Part part) {
    std::vector<std::size_t> methods;
    for (std::size_t i = 0; i < data().methods.size(); ++i) {
        if ((data().methods[i].parts & evidence::part_bit(part)) != 0) methods.push_back(i);
    }
    return methods;
}

}  // namespace

double RandomDossier::between(double low, double high) {
    return low + (high - low) * static_cast<double>(random_() >> 11U) * 0x1.0p-53;
}

evidence::PartRecord RandomDossier::part() {
    evidence::PartRecord record;
    record.part = static_cast<Part>(below(kPartCount));
    const std::vector<std::size_t> methods = methods_for(record.part);
    const std::size_t count = 1 + below(6);
    while (record.readings.size() < count) {
        evidence::Reading reading;
        reading.method = methods[below(methods.size())];
        const Method& method = data().methods[reading.method];
        if (!method.outcomes.empty() && below(4) > 0) reading.outcome = below(method.outcomes.size());
        if (method.likelihood_by == LikelihoodBy::density && below(2) == 0) {
            const measure::Measured density{.value = between(1, 20), .u = between(0.001, 0.3)};
            reading.quantities.push_back({"density", density, measure::Dimension::density});
        }
        if (method.likelihood_by == LikelihoodBy::composition && below(2) == 0) {
            for (const std::string_view element : kElements) {
                if (below(3) > 0) continue;
                const double percent = below(2) == 0 ? between(0, 1) : between(0, 90);
                reading.composition.emplace_back(element, measure::Measured{.value = percent, .u = between(0.01, 2)});
            }
        }
        record.readings.push_back(std::move(reading));
    }
    return record;
}

std::string RandomDossier::quantities(const Method& method) {
    std::string text;
    const auto number = [&](double low, double high) { return std::to_string(between(low, high)); };
    if (method.computes == Computes::density) {
        const double density = between(1.1, 12);
        text += ", in_air: 20 \xC2\xB1 0.003 g, water: 21 \xC2\xB1 0.5 degC, in_water: " +
                std::to_string(20 - 20 / density) + " \xC2\xB1 0.006 g";
    }
    if (method.computes == Computes::colour_change) {
        text += ", before: {L: 50 \xC2\xB1 0.5, a: 10 \xC2\xB1 0.5, b: 12 \xC2\xB1 0.5}, after: {L: " + number(45, 55) +
                " \xC2\xB1 0.5, a: " + number(8, 12) + " \xC2\xB1 0.5, b: " + number(10, 14) + " \xC2\xB1 0.5}";
    }
    for (const evidence::QuantityRead& quantity : method.reads) {
        // What is computed from was written above.
        if (method.computes == Computes::density || method.computes == Computes::colour_change) break;
        if (quantity.name == "content") {
            text += ", composition: {Zn: " + number(0, 40) + " \xC2\xB1 0.5 %, Ni: " + number(0, 0.3) +
                    " \xC2\xB1 0.02 %, Cr: " + number(0, 3) + " \xC2\xB1 0.05 %, Pb: " + number(0, 3) +
                    " \xC2\xB1 0.02 %, Cu: " + number(0, 50) + " \xC2\xB1 0.5 %}";
        } else if (quantity.name == "fibre-share") {
            const double cotton = between(0, 95);
            text += ", shares: {cotton: " + std::to_string(cotton) +
                    " \xC2\xB1 1 %, polyester: " + std::to_string(99 - cotton) + " \xC2\xB1 1 %}";
        } else if (quantity.name == "total") {
            text += ", total: " + number(0.8, 2) + " \xC2\xB1 0.03 mm";
        } else if (quantity.name == "coat") {
            text += ", coat: " + number(0, 0.5) + " \xC2\xB1 0.01 mm";
        } else {
            const std::string unit = quantity.unit == "none" ? "" : " " + quantity.unit;
            text += ", " + quantity.name + ": " + number(1, 5) + " \xC2\xB1 0.2" + unit;
        }
    }
    return text;
}

std::size_t RandomDossier::outcome_of(const Method& method, const std::vector<std::size_t>& truth) {
    const std::size_t outcomes = method.outcomes.size();
    if (method.tables.empty() || below(4) == 0) return below(outcomes);
    const evidence::OutcomeTable& table = method.tables.front();
    const auto row = table.chance.begin() + static_cast<std::ptrdiff_t>(truth[table.frame] * outcomes);
    return static_cast<std::size_t>(std::max_element(row, row + static_cast<std::ptrdiff_t>(outcomes)) - row);
}

std::string RandomDossier::reading(Part part, const std::vector<std::size_t>& truth) {
    const std::vector<std::size_t> methods = methods_for(part);
    const Method& method = data().methods[methods[below(methods.size())]];
    std::string text = "      - {method: " + method.id;
    const std::string numbers = below(3) > 0 ? quantities(method) : std::string();
    // A word and numbers drawn each for itself would contradict one another, and be refused.
    const bool numbers_say = !numbers.empty() && !method.only_if.empty();
    if (!method.outcomes.empty() && !numbers_say) {
        text += ", outcome: " + method.outcomes[outcome_of(method, truth)].id + numbers;
    } else {
        text += numbers.empty() ? quantities(method) : numbers;
    }
    return text + "}\n";
}

std::string RandomDossier::yaml() {
    constexpr std::string_view kRegions[] = {"us", "eu", "de", "it", "es", "fr", "uk", "cn"};
    constexpr Part kParts[] = {Part::body, Part::lining, Part::hardware, Part::strap, Part::zip};
    std::string text = "sample: {what: a bag, category: bag";
    if (below(3) == 0) text += ", condition: used";
    text += "}\nlisting:\n  region: " + std::string(kRegions[below(std::size(kRegions))]) + "\n  description: |\n";
    for (std::size_t i = 0; i < 4; ++i) {
        text += "    " + std::string(kSentences[below(std::size(kSentences))]) + "\n";
    }
    text += "parts:\n";
    for (const Part part : kParts) {
        const std::size_t count = below(6);
        if (count == 0) continue;
        std::vector<std::size_t> truth;
        for (const evidence::Frame& frame : data().frames) truth.push_back(below(frame.candidates.size()));
        text += "  " + std::string(name_of(part)) + ":\n    readings:\n";
        for (std::size_t i = 0; i < count; ++i) text += reading(part, truth);
    }
    return text.ends_with("parts:\n") ? text.substr(0, text.size() - 7) : text;
}

}  // namespace grainside::support
