#include "measure/significant_place.h"

#include <fmt/format.h>

#include <charconv>
#include <string>

namespace grainside::measure {

int significant_place(double number, int digits) {
    // The rounding is that of the printed decimal; a logarithm errs just below a power of ten.
    const std::string text = fmt::format("{:.{}e}", number, digits - 1);
    std::size_t exponent = text.find('e') + 1;
    if (text[exponent] == '+') ++exponent;
    int power = 0;
    std::from_chars(text.data() + exponent, text.data() + text.size(), power);
    return power - (digits - 1);
}

}  // namespace grainside::measure
