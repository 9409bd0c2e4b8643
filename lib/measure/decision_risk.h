// How often a decision rule errs over many items: the global risks of JCGM 106:2012, clause 9.5.
//
// The specific risk of one decision needs no function of its own: it is failure_probability of what was accepted and
// conformity_probability of what was rejected (9.3.2). Thread-safe.
#ifndef GRAINSIDE_MEASURE_DECISION_RISK_H
#define GRAINSIDE_MEASURE_DECISION_RISK_H

#include <functional>

#include "measure/conformity.h"

namespace grainside::measure {

// How the items of a process are spread before anyone measures them: a probability density that is negligible outside
// `from` to `to` and smooth within.
struct ItemSpread {
    std::function<double(double)> density;
    double from = 0;
    double to = 0;
};

// REQUIRES: sd > 0.
ItemSpread normal_spread(double mean, double sd);

// Shares of all items.
struct GlobalRisk {
    double consumer = 0;  // outside the tolerance and accepted all the same
    double producer = 0;  // within the tolerance and rejected all the same
    double outside = 0;   // outside the tolerance, accepted or not
};

// For measurements that err normally with standard uncertainty `u` and accept what they find within `acceptance`. By
// Simpson's rule between every place where the integrand bends; good to about 1e-9.
// REQUIRES: u > 0; spread.from < spread.to, both finite.
GlobalRisk global_risk(const ItemSpread& spread, double u, const Limit& tolerance, const Limit& acceptance);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_DECISION_RISK_H
