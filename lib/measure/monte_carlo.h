// Propagation of distributions by drawing: the adaptive procedure of JCGM 101:2008, 7.9.
//
// For formulas that are far from linear within the uncertainties of their inputs. The same seed gives the same result
// on every machine, but for the last digits of the C library's log, cos and exp: draws come from the 64-bit Mersenne
// Twister, whose output the C++ standard lays down, through formulas of our own (monte_carlo.cpp), never through the
// distributions of <random>, which differ between standard libraries. Inputs are taken as independent. Thread-safe, if
// the model is.
#ifndef GRAINSIDE_MEASURE_MONTE_CARLO_H
#define GRAINSIDE_MEASURE_MONTE_CARLO_H

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>

#include "measure/distribution.h"
#include "measure/measured.h"
#include "measure/propagation.h"

namespace grainside::measure {

// `measured.u` is the standard deviation of a normal or rectangular distribution (whose half width is u * sqrt 3) and
// the scale of Student's t with `measured.dof`, as JCGM 101:2008, 6.4.9 has it. A t with two degrees of freedom or
// fewer has no standard deviation: intervals are sound then, but `u` is not and does not stabilise.
struct Draw {
    Measured measured;
    Distribution distribution = Distribution::normal;
};

// Student's t where the degrees of freedom are finite, normal otherwise.
Draw draw_of(const Measured& measured) noexcept;

struct MonteCarloOptions {
    std::uint64_t seed = 1;
    double probability = 0.95;  // of the coverage intervals; between 0 and 1
    // How many significant digits of u shall be right, 1 or 2: results count as stable once twice their standard
    // deviation between blocks is below half a unit of the last one (7.9.2).
    int digits = 2;
    // At most 8 bytes of memory each. Raise it where `stabilised` is false and the last digit matters.
    std::size_t max_trials = 1'000'000;
};

struct Interval {
    double low = 0;
    double high = 0;
};

struct MonteCarloResult {
    double mean = 0;
    double u = 0;
    Interval symmetric;  // as much probability below as above (7.7.2)
    Interval shortest;   // the shortest that holds the probability (7.7.4)
    std::size_t trials = 0;
    bool stabilised = false;  // false: max_trials came first
};

// Nothing where any trial of the model gave no finite number: an interval without those trials would be too narrow.
// REQUIRES: the options' ranges; max_trials >= 2; all inputs finite.
std::optional<MonteCarloResult> monte_carlo(const Model& model, std::span<const Draw> inputs,
                                            const MonteCarloOptions& options = {});

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_MONTE_CARLO_H
