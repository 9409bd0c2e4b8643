#include "report/fixed_texts.h"

namespace grainside::report {
namespace {

constexpr std::string_view kOneSample =
    "One sample was bought and tested. What holds for it may not hold for the next one from the same maker, nor for "
    "places of it that nobody looked at.";
constexpr std::string_view kBeliefs =
    "A belief is a sum over what each test is known to show on each material. Most of these likelihoods are common "
    "practice and no measured rates; the sources say which.";
constexpr std::string_view kDecisionRule =
    "A limit decides only where the value lies further from it than its uncertainty, by the decision rule named "
    "below. What stands behind a plus-minus is the expanded uncertainty (k = 2).";
constexpr std::string_view kWordsOnly =
    "Without a reading, only the wording is judged. No finding on words says what the thing is made of.";

}  // namespace

std::string_view meaning_of(Grade grade) noexcept {
    switch (grade) {
        case Grade::contradicted:
            return "the readings on record show the words false";
        case Grade::misleading:
            return "the words give a wrong impression under a cited definition, or the listing disagrees with itself";
        case Grade::unsupported:
            return "the words need a test or a document, and none is on record";
        case Grade::inconclusive:
            return "the readings on record do not decide";
        case Grade::vague:
            return "the words mean nothing that can be checked";
        case Grade::consistent:
            return "the readings bear the words out";
    }
    return {};
}

std::span<const std::string_view> limits_of_method() noexcept {
    static constexpr std::string_view kLimits[] = {kOneSample, kBeliefs, kDecisionRule, kReadingNote, kWordsOnly};
    return kLimits;
}

}  // namespace grainside::report
