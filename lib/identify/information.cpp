#include "identify/information.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace grainside::identify {

double entropy(std::span<const double> distribution) {
    double bits = 0;
    for (const double p : distribution) {
        if (p > 0) bits -= p * std::log2(p);
    }
    return bits;
}

double mutual_information(std::span<const double> belief, std::span<const int> classes, int class_count,
                          std::span<const double> chance, std::size_t outcome_count) {
    const auto count = static_cast<std::size_t>(class_count);
    std::vector<double> joint(count * outcome_count, 0);  // [class * outcome_count + outcome]
    std::vector<double> of_class(count, 0);
    std::vector<double> of_outcome(outcome_count, 0);
    for (std::size_t candidate = 0; candidate < belief.size(); ++candidate) {
        const auto its_class = static_cast<std::size_t>(classes[candidate]);
        of_class[its_class] += belief[candidate];
        for (std::size_t outcome = 0; outcome < outcome_count; ++outcome) {
            const double both = belief[candidate] * chance[candidate * outcome_count + outcome];
            joint[its_class * outcome_count + outcome] += both;
            of_outcome[outcome] += both;
        }
    }
    double bits = 0;
    for (std::size_t its_class = 0; its_class < count; ++its_class) {
        for (std::size_t outcome = 0; outcome < outcome_count; ++outcome) {
            const double both = joint[its_class * outcome_count + outcome];
            if (both > 0) bits += both * std::log2(both / (of_class[its_class] * of_outcome[outcome]));
        }
    }
    return std::max(0.0, bits);
}

double binary_information(double yes, double reliability) {
    const double seen_yes = yes * reliability + (1 - yes) * (1 - reliability);
    const std::array answer{seen_yes, 1 - seen_yes};
    const std::array noise{reliability, 1 - reliability};
    return std::max(0.0, entropy(answer) - entropy(noise));
}

}  // namespace grainside::identify
