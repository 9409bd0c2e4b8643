// Whether a measured value meets a limit: with which probability, and what is decided.
//
// JCGM 106:2012: clause 7 for the probability, clause 8 for decision rules and guard bands. A guard band is
// w = g * U with U = 2 u; g = 1 is the usual choice (8.3.2.3). Doubles in, plain values out; thread-safe.
#ifndef GRAINSIDE_MEASURE_CONFORMITY_H
#define GRAINSIDE_MEASURE_CONFORMITY_H

#include <cstdint>
#include <optional>
#include <string_view>

#include "measure/measured.h"

namespace grainside::measure {

// What is allowed, in the working unit of the measured value. An absent end is open; with neither, all conforms.
// Whether an end itself is allowed matters only for a value that lies on it with nothing in between: for the
// probability where u = 0, for decisions where the guard band is 0.
// REQUIRES: the ends are finite and lower <= upper.
struct Limit {
    std::optional<double> lower;
    std::optional<double> upper;
    bool lower_inclusive = true;
    bool upper_inclusive = true;
};

enum class DecisionRule : std::uint8_t {
    simple_acceptance,   // the value as it stands; the risk of error is shared (8.2)
    guarded_acceptance,  // conforms only where inside by more than the guard band, fails otherwise (8.3.2)
    guarded_rejection,   // fails only where outside by more than the guard band, conforms otherwise (8.3.3)
    both_guarded         // conforms as in guarded acceptance, fails as in guarded rejection, undecided between
};
std::string_view name_of(DecisionRule rule) noexcept;  // "simple-acceptance" for simple_acceptance

enum class Decision : std::uint8_t { conforms, fails, undecided };
std::string_view name_of(Decision decision) noexcept;

// The probability that the measurand itself meets the limit, and that it does not; each keeps its digits where it is
// small. Normal; Student's t scaled by u where the degrees of freedom are finite. With u = 0 one of them is 1.
// REQUIRES: value finite, u finite and >= 0, dof > 0.
double conformity_probability(const Measured& measured, const Limit& limit);
double failure_probability(const Measured& measured, const Limit& limit);

// The guard band g * 2 u.
double guard_band(const Measured& measured, double guard_factor = 1);

// undecided comes from both_guarded only.
// REQUIRES: as above, guard_factor >= 0 and finite.
Decision decide(const Measured& measured, const Limit& limit, DecisionRule rule = DecisionRule::both_guarded,
                double guard_factor = 1);

// The part of the limit whose acceptance leaves a guard band of `w` on the inside, the acceptance interval of JCGM 106;
// a negative `w` widens it. Nothing where no value is left.
std::optional<Limit> acceptance_interval(const Limit& tolerance, double w);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_CONFORMITY_H
