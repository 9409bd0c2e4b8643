// to_text of quantity_text.h.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

#include "measure/plain_signs.h"
#include "measure/quantity_text.h"
#include "measure/significant_place.h"

namespace grainside::measure {
namespace {

// Beyond these powers of ten a number is printed with an exponent.
constexpr int kSmallestPlainPower = -9;
constexpr int kLargestPlainPower = 14;

// The power of ten of the first digit of `number`, once it is rounded to a multiple of 10^place.
// REQUIRES: `number` is not 0.
int first_place(double number, int place) {
    constexpr int kEveryDigit = 17;
    const int unrounded = significant_place(number, kEveryDigit) + kEveryDigit - 1;
    const int digits = std::max(1, unrounded - place + 1);
    return significant_place(number, digits) + digits - 1;
}

// `number` rounded to a multiple of 10^place.
std::string rounded_text(double number, int place) {
    if (place > 0) {
        const double unit = std::pow(10.0, place);
        number = std::round(number / unit) * unit;
    }
    const int power = number == 0 ? place - 2 : first_place(number, place);
    // Less than a tenth of the place counts for nothing.
    if (power < place - 1) return place < 0 && place >= kSmallestPlainPower ? fmt::format("{:.{}f}", 0.0, -place) : "0";
    if (power < kSmallestPlainPower || power > kLargestPlainPower) {
        return fmt::format("{:.{}e}", number, std::max(0, power - place));
    }
    std::string text = fmt::format("{:.{}f}", number, std::max(0, -place));
    // A value that rounds to zero has no sign.
    if (text.starts_with('-') && text.find_first_of("123456789") == std::string::npos) text.erase(0, 1);
    return text;
}

}  // namespace

std::string to_text(const Measured& measured, const UnitInfo& unit) {
    const double value = from_working(measured.value, unit);
    std::string text;
    if (measured.u == 0) {
        text = fmt::format("{}", value);
    } else {
        const double expanded = kCustomaryCoverage * measured.u / unit.factor;
        const int place = significant_place(expanded, 2);
        text = fmt::format("{} {} {}", rounded_text(value, place), kPlusMinus, rounded_text(expanded, place));
    }
    if (!unit.name.empty()) fmt::format_to(std::back_inserter(text), " {}", unit.name);
    return text;
}

}  // namespace grainside::measure
