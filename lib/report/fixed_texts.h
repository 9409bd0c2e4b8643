// What every report for people says of itself: what a grade is, how far the method reaches, who decides. Nothing here
// is knowledge of the trade.
#ifndef GRAINSIDE_REPORT_FIXED_TEXTS_H
#define GRAINSIDE_REPORT_FIXED_TEXTS_H

#include <span>
#include <string_view>

#include "grainside/finding.h"

namespace grainside::report {

inline constexpr std::string_view kNoAdvice =
    "This is not legal advice; local law and licensed practice decide. A grade judges words and evidence, never "
    "intent. "
    "'From memory' marks a source whose text could not be seen when the rule was written.";

inline constexpr std::string_view kReadingNote =
    "The words were read by a grammar that errs: on listings that it had not seen, one finding in twenty to one in "
    "four was wrong, and more where many parts are told apart. Look at the marked words before you publish.";

inline constexpr std::string_view kPlanNote =
    "Minutes, fees and likelihoods are common practice; make the plan anew after each test.";

inline constexpr std::string_view kWordingNote =
    "Each of these passes by itself the check that the listing was held against, in its market and on its day, and no "
    "reading contradicts it. Whether it is true of the next batch, the seller must know.";

inline constexpr std::string_view kNoWording =
    "Nothing is offered: no words were found for which this book knows others.";

inline constexpr std::string_view kNoCaution = "No test that is named here needs a caution.";

inline constexpr std::string_view kPriceNote =
    "Costs are estimates of what such a product takes, not the maker's books. A price may raise a question; it "
    "contradicts no claim.";

// "the words are shown false by the readings of this dossier"
std::string_view meaning_of(Grade grade) noexcept;

// What the method cannot do, one paragraph each.
std::span<const std::string_view> limits_of_method() noexcept;

}  // namespace grainside::report

#endif  // GRAINSIDE_REPORT_FIXED_TEXTS_H
