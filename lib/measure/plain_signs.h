// Quantities as people type them, with one spelling for each sign. Thread-safe.
#ifndef GRAINSIDE_MEASURE_PLAIN_SIGNS_H
#define GRAINSIDE_MEASURE_PLAIN_SIGNS_H

#include <optional>
#include <string>
#include <string_view>

namespace grainside::measure {

// As it is printed.
inline constexpr std::string_view kPlusMinus = "\xC2\xB1";

// `text` in ASCII: plus-minus becomes "+-", both micro signs "u", a raised 2 or 3 "^2" or "^3", a degree sign "deg",
// hyphens, dashes and minus "-", a raised dot ".", per mille "permille", the two inch marks a quotation mark, "at most"
// and "at least" "<=" and ">=", and every kind of space and tab a space. Nothing where anything else beyond printable
// ASCII occurs. What is plain stays as it is.
std::optional<std::string> plain_signs(std::string_view text);

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_PLAIN_SIGNS_H
