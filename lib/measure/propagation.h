// The law of propagation of uncertainty, JCGM 100:2008: to first order, with or without correlation.
//
// Sound where the formula is near to linear within the uncertainties of its inputs; otherwise use monte_carlo.h. Works
// for quantities of any dimension: all inputs stand in their working units. Thread-safe, if the model is.
#ifndef GRAINSIDE_MEASURE_PROPAGATION_H
#define GRAINSIDE_MEASURE_PROPAGATION_H

#include <functional>
#include <span>
#include <vector>

#include "measure/measured.h"

namespace grainside::measure {

// A formula: the output for given values of the inputs, in their order.
using Model = std::function<double(std::span<const double>)>;

// Row by row, `inputs` x `inputs`, symmetric with ones on the diagonal; empty says that nothing is correlated.
using Correlations = std::span<const double>;

// The slope of the model against each input at the input values (the sensitivity coefficients of 5.1.3), by central
// differences over an eighth of the input's uncertainty with one step of Richardson's extrapolation; 0 for exact
// inputs, which do not count.
std::vector<double> sensitivities_of(const Model& model, std::span<const Measured> inputs);

// The combined standard uncertainty (5.1.2; 5.2.2 where `correlations` are given) and its degrees of freedom, for an
// output of `value`. Degrees of freedom: Welch-Satterthwaite (G.4.1), which supposes inputs that are not correlated;
// with correlations, the fewest that any input has, which errs to the wide side.
// REQUIRES: one sensitivity for each input; the shape of `correlations` above.
Measured propagate(double value, std::span<const Measured> inputs, std::span<const double> sensitivities,
                   Correlations correlations = {});
// The same with the value and the sensitivities of the model.
Measured propagate(const Model& model, std::span<const Measured> inputs, Correlations correlations = {});

// The correlation of two outputs of the same inputs (JCGM 100:2008, 5.2.3 with H.2.3), from their sensitivities. 0
// where one of them is exact.
double correlation_of(std::span<const Measured> inputs, std::span<const double> first, std::span<const double> second,
                      Correlations correlations = {});

// The coverage factor t_p(dof) of G.3; degrees of freedom are cut to whole ones first (G.4.1), 1.959964 for infinitely
// many and 95 %.
// REQUIRES: 0 < probability < 1, dof > 0.
double coverage_factor(double probability, double dof);

// Half the width of the coverage interval: coverage_factor times u.
double expanded_uncertainty(const Measured& measured, double probability = 0.95);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_PROPAGATION_H
