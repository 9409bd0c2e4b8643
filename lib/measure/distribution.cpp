#include "measure/distribution.h"

#include <boost/math/distributions/complement.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <boost/math/policies/policy.hpp>
#include <cmath>

namespace grainside::measure {
namespace {

namespace policies = boost::math::policies;

// Nothing may throw. Without promotion to `long double`, whose width differs between machines, results agree on all.
using Quiet =
    policies::policy<policies::promote_double<false>, policies::domain_error<policies::ignore_error>,
                     policies::pole_error<policies::ignore_error>, policies::overflow_error<policies::ignore_error>,
                     policies::evaluation_error<policies::ignore_error>>;
using Normal = boost::math::normal_distribution<double, Quiet>;
using StudentT = boost::math::students_t_distribution<double, Quiet>;

}  // namespace

std::string_view name_of(Distribution distribution) noexcept {
    switch (distribution) {
        case Distribution::normal:
            return "normal";
        case Distribution::rectangular:
            return "rectangular";
        case Distribution::student_t:
            return "student-t";
    }
    return {};
}

double probability_below(double z, double dof) {
    if (std::isinf(z)) return z < 0 ? 0 : 1;
    if (std::isinf(dof)) return boost::math::cdf(Normal(), z);
    return boost::math::cdf(StudentT(dof), z);
}

double probability_above(double z, double dof) {
    // Both distributions are symmetric about 0.
    return probability_below(-z, dof);
}

double two_sided_quantile(double probability, double dof) {
    const double above = (1 - probability) / 2;
    if (std::isinf(dof)) return boost::math::quantile(boost::math::complement(Normal(), above));
    return boost::math::quantile(boost::math::complement(StudentT(dof), above));
}

}  // namespace grainside::measure
