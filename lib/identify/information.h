// How much a test is expected to tell, in bits: mutual information between its outcome and what is asked (Cover and
// Thomas, Elements of Information Theory, 2.3). Pure functions.
#ifndef GRAINSIDE_IDENTIFY_INFORMATION_H
#define GRAINSIDE_IDENTIFY_INFORMATION_H

#include <span>
#include <vector>

namespace grainside::identify {

// Of a distribution that adds up to 1, in bits.
double entropy(std::span<const double> distribution);

// Between a class and an outcome. `belief`: by candidate, adds up to 1; `classes`: the class of each candidate, smaller
// than `class_count`; `chance`: [candidate * outcome_count + outcome], a candidate's add up to 1. In bits, never
// negative, at most the entropy of the classes.
double mutual_information(std::span<const double> belief, std::span<const int> classes, int class_count,
                          std::span<const double> chance, std::size_t outcome_count);

// Between a yes-or-no that is yes with probability `yes` and a test that gives the right answer with probability
// `reliability` whichever it is: a binary symmetric channel.
double binary_information(double yes, double reliability);

}  // namespace grainside::identify

#endif  // GRAINSIDE_IDENTIFY_INFORMATION_H
