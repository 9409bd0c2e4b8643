#include "measure/monte_carlo.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <tuple>
#include <vector>

#include "measure/significant_place.h"

namespace grainside::measure {
namespace {

constexpr double kTurn = 6.283185307179586;  // two pi
// The least block of 7.9.4 b; a block also holds 100 values beyond each coverage interval.
constexpr std::size_t kLeastBlock = 10'000;
constexpr double kBeyondInterval = 100;

// Uniform between 0 and 1, both left out: the middle of one of 2^52 equal cells, so that every value is a double.
double uniform(std::mt19937_64& generator) {
    constexpr double kCell = 0x1p-52;
    return (static_cast<double>(generator() >> 12) + 0.5) * kCell;
}

// Both by the polar form, radius times cosine: G. E. P. Box and M. E. Muller, Annals of Mathematical Statistics 29
// (1958) 610, given in JCGM 101:2008, C.4; for t, R. W. Bailey, Mathematics of Computation 62 (1994) 779, which tends
// to the former for many degrees of freedom.
double standard_normal(std::mt19937_64& generator) {
    const double radius = std::sqrt(-2 * std::log(uniform(generator)));
    return radius * std::cos(kTurn * uniform(generator));
}

double standard_t(std::mt19937_64& generator, double dof) {
    const double radius = std::sqrt(dof * std::expm1(-2 / dof * std::log(uniform(generator))));
    return radius * std::cos(kTurn * uniform(generator));
}

double drawn(const Draw& input, std::mt19937_64& generator) {
    const Measured& measured = input.measured;
    if (measured.u == 0) return measured.value;
    switch (input.distribution) {
        case Distribution::normal:
            break;
        case Distribution::rectangular:
            return measured.value + measured.u * std::sqrt(3.0) * (2 * uniform(generator) - 1);
        case Distribution::student_t:
            if (std::isinf(measured.dof)) break;
            return measured.value + measured.u * standard_t(generator, measured.dof);
    }
    return measured.value + measured.u * standard_normal(generator);
}

struct Moments {
    double mean = 0;
    double sd = 0;
};

Moments moments_of(std::span<const double> values) {
    const auto count = static_cast<double>(values.size());
    double mean = 0;
    for (const double value : values) mean += value / count;
    // A second pass takes back what the first one's rounding has added up to.
    double left = 0;
    for (const double value : values) left += (value - mean) / count;
    mean += left;
    double squares = 0;
    for (const double value : values) squares += (value - mean) * (value - mean);
    return {mean, std::sqrt(squares / (count - 1))};
}

// How many of `count` sorted values the interval spans from its first to its last.
std::size_t span_of_interval(std::size_t count, double probability) {
    const auto span = static_cast<std::size_t>(std::lround(probability * static_cast<double>(count)));
    return std::clamp<std::size_t>(span, 1, count - 1);
}

// Where the symmetric interval begins: the r of 7.7.2, which counts from 1.
std::size_t first_of_symmetric(std::size_t count, std::size_t span) {
    return (count - span + 1) / 2 - 1;
}

Interval symmetric_interval(std::span<const double> sorted, double probability) {
    const std::size_t span = span_of_interval(sorted.size(), probability);
    const std::size_t low = first_of_symmetric(sorted.size(), span);
    return {sorted[low], sorted[low + span]};
}

// The same of values in any order, which it moves about: two of them need no sorting of all.
Interval symmetric_of_unsorted(std::span<double> values, double probability) {
    const std::size_t span = span_of_interval(values.size(), probability);
    const auto low = values.begin() + static_cast<std::ptrdiff_t>(first_of_symmetric(values.size(), span));
    const auto high = low + static_cast<std::ptrdiff_t>(span);
    std::nth_element(values.begin(), low, values.end());
    std::nth_element(low + 1, high, values.end());
    return {*low, *high};
}

Interval shortest_interval(std::span<const double> sorted, double probability) {
    const std::size_t span = span_of_interval(sorted.size(), probability);
    std::size_t best = 0;
    for (std::size_t low = 1; low + span < sorted.size(); ++low) {
        if (sorted[low + span] - sorted[low] < sorted[best + span] - sorted[best]) best = low;
    }
    return {sorted[best], sorted[best + span]};
}

// The four results of a block whose spread between blocks tells how settled they are.
using BlockResult = std::array<double, 4>;

BlockResult block_result(std::vector<double> block, double probability) {
    const Moments moments = moments_of(block);
    const Interval interval = symmetric_of_unsorted(block, probability);
    return {moments.mean, moments.sd, interval.low, interval.high};
}

// Steps g to k of 7.9.4.
bool settled(const std::vector<BlockResult>& blocks, double u, int digits) {
    if (blocks.size() < 2) return false;
    if (!std::isfinite(u)) return false;
    const double tolerance = u == 0 ? 0 : std::pow(10.0, significant_place(u, digits)) / 2;
    const auto count = static_cast<double>(blocks.size());
    for (std::size_t i = 0; i < std::tuple_size_v<BlockResult>; ++i) {
        std::vector<double> values;
        values.reserve(blocks.size());
        for (const BlockResult& block : blocks) values.push_back(block[i]);
        if (!(2 * moments_of(values).sd / std::sqrt(count) <= tolerance)) return false;
    }
    return true;
}

std::size_t block_size(const MonteCarloOptions& options) {
    const double wanted = std::ceil(kBeyondInterval / (1 - options.probability));
    const auto cap = static_cast<double>(options.max_trials);
    return static_cast<std::size_t>(std::min(cap, std::max(wanted, static_cast<double>(kLeastBlock))));
}

}  // namespace

Draw draw_of(const Measured& measured) noexcept {
    return {measured, std::isinf(measured.dof) ? Distribution::normal : Distribution::student_t};
}

std::optional<MonteCarloResult> monte_carlo(const Model& model, std::span<const Draw> inputs,
                                            const MonteCarloOptions& options) {
    std::mt19937_64 generator(options.seed);
    const std::size_t block = block_size(options);
    std::vector<double> values;
    std::vector<BlockResult> blocks;
    std::vector<double> at(inputs.size());
    Moments moments;
    bool stabilised = false;
    while (!stabilised && values.size() + block <= options.max_trials) {
        const std::size_t start = values.size();
        for (std::size_t trial = 0; trial < block; ++trial) {
            for (std::size_t i = 0; i < inputs.size(); ++i) at[i] = drawn(inputs[i], generator);
            const double value = model(at);
            if (!std::isfinite(value)) return std::nullopt;
            values.push_back(value);
        }
        const std::span<const double> newest = std::span<const double>(values).subspan(start);
        blocks.push_back(block_result({newest.begin(), newest.end()}, options.probability));
        moments = moments_of(values);
        stabilised = settled(blocks, moments.sd, options.digits);
    }
    std::sort(values.begin(), values.end());
    return MonteCarloResult{.mean = moments.mean,
                            .u = moments.sd,
                            .symmetric = symmetric_interval(values, options.probability),
                            .shortest = shortest_interval(values, options.probability),
                            .trials = values.size(),
                            .stabilised = stabilised};
}

}  // namespace grainside::measure
