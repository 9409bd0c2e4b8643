// Measured quantities as people write them, read and printed.
//
//     "0.21 mm"                           a bare value; what its uncertainty is, the caller must know
//     "0.21 +- 0.02 mm"                   expanded uncertainty, k = 2; also with "+/-" and the plus-minus sign
//     "0.21 +- 0.02 mm (k=3)"             expanded with another factor; "k=3" behind a comma does as well
//     "0.21 +- 0.02 mm (s)", "(u)"        standard uncertainty; "(k=1)" says the same
//     "0.21 mm +- 10 %"                   uncertainty as a share of the value
//     "0.21(2) mm", "0.21(0.02) mm"       standard uncertainty in the last digits, or in full (JCGM 100:2008, 7.2.2)
//     "1.2-1.4 mm", "1.2 to 1.4 mm"       anywhere between two ends: rectangular, u = half width / sqrt 3 (4.3.7)
//     "0.20, 0.22, 0.21 mm"               repeat readings, at least three, also with ";" (mean_of in repeats.h)
//     "exactly 5 mm", "= 5 mm"            no uncertainty
//     "< 0.005 %"                         not found by a method that finds 0.005 %: rectangular from 0
//
// What stands behind a plus-minus is taken as EXPANDED with k = 2 unless the text says otherwise: laboratories report
// it so (JCGM 100:2008, 7.2.4; ISO/IEC 17025), and the GUM itself advises against a plus-minus for a standard
// uncertainty because readers take it for an interval of high confidence (7.2.2, note).
//
// "> 5 h" is refused: with no upper end there is neither a value nor an uncertainty. A comma inside a number is refused
// too, for a comma stands between repeats. A share of a share is read in the unit of the value: "5 +- 1 %" and
// "5 % +- 1 %" are 4 % to 6 %, while "50 mg/kg +- 10 %" are 45 to 55. A share of a temperature means nothing. Numbers
// have a decimal point and may have an exponent ("2e-4"); a unit may touch its number. Where several values stand, one
// unit holds for all, or each has its own.
//
// Limit: 400 bytes. No exceptions but for want of memory. Thread-safe.
#ifndef GRAINSIDE_MEASURE_QUANTITY_TEXT_H
#define GRAINSIDE_MEASURE_QUANTITY_TEXT_H

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <variant>

#include "measure/distribution.h"
#include "measure/measured.h"
#include "measure/unit.h"

namespace grainside::measure {

inline constexpr std::size_t kMaxQuantityBytes = 400;

// A coverage factor that a plus-minus has where it says none, and that printed quantities have.
inline constexpr double kCustomaryCoverage = 2;

struct ParsedQuantity {
    Measured measured;  // in the working unit; finite
    Dimension dimension = Dimension::number;
    const UnitInfo* unit = nullptr;  // that of the value as written, never null
    Distribution distribution = Distribution::normal;
    bool states_uncertainty = false;  // false for a bare value, whose `measured.u` is 0 for want of knowledge
    bool exact = false;               // "exactly": `measured.u` is 0 because there is none
    bool below_detection = false;     // "<"
};

// Why a text is no quantity. Codes:
//   empty, too-long, malformed, decimal-comma, out-of-range (beyond what a double holds with all digits),
//   missing-unit, unknown-unit, wrong-unit (of another dimension), mixed-units (some values with, others without),
//   bad-uncertainty (zero, negative, or a coverage factor outside 0.5 to 20), range-reversed, too-few-repeats,
//   open-ended (">"), not-positive ("<" of something that cannot count from 0)
struct QuantityFault {
    std::string_view code;
    std::string message;  // one sentence, no full stop; safe to show on a terminal
    std::string hint;     // what to write instead; may be empty
};

using QuantityOrFault = std::variant<ParsedQuantity, QuantityFault>;

// Whether a hint on a comma inside a number offers two numbers too, which money never is.
enum class CommaHint : std::uint8_t { one_or_two, one };

QuantityOrFault parse_quantity(std::string_view text, Dimension expected, CommaHint comma = CommaHint::one_or_two);

// `measured` (in the working unit) in `unit`, with its expanded uncertainty (k = 2) rounded to two significant digits
// and the value rounded to the same place (JCGM 100:2008, 7.2.6): "0.210 +- 0.020 mm" with the plus-minus sign. Where u
// is 0, the shortest decimal that reads back as the same value in that unit, without plus-minus. Exponents from 1e15 on
// and below 1e-9. What is printed reads back the same within the rounding; only the degrees of freedom are lost.
// REQUIRES: value and 2 u are finite in `unit` too, u >= 0.
std::string to_text(const Measured& measured, const UnitInfo& unit);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_QUANTITY_TEXT_H
