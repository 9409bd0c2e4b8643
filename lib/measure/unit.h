// What can be measured here, and in which units people write it.
//
// Every dimension has one working unit, in which every value inside the library stands; other units occur only where
// text is read or written. Factors are exact by definition: the inch is 25.4 mm, the pound 0.45359237 kg (international
// yard and pound agreement, 1959), the standard acceleration of free fall 9.80665 m/s2 (3rd CGPM, 1901); the leather
// ounce is 1/64 inch and the iron 1/48 inch of thickness (trade usage); a foot is 0.3048 m and a yard 0.9144 m, so that
// a square foot is 9.290304 dm2; a side is half a hide; a year is 365.25 days and a month a twelfth of it. The table is
// constant; any number of threads may read it.
#ifndef GRAINSIDE_MEASURE_UNIT_H
#define GRAINSIDE_MEASURE_UNIT_H

#include <cstdint>
#include <string_view>
#include <vector>

namespace grainside::measure {

enum class Dimension : std::uint8_t {
    number,           // a plain number: a grade, a pH value, a colour difference; no unit
    share,            // in %, of mass unless the method says otherwise
    length,           // in mm
    mass,             // in g
    density,          // in g/cm3
    temperature,      // in degrees Celsius; units with another zero are converted with it
    time,             // in h
    release_rate,     // in ug/cm2/week
    force_per_width,  // in N/cm
    force,            // in N
    mass_per_area,    // in g/m2
    area,             // in dm2
    hides             // in hides: how leather is counted that is sold as it comes off the animal
};
inline constexpr std::size_t kDimensionCount = 13;
std::string_view name_of(Dimension dimension) noexcept;  // "release rate" for release_rate

// A value `v` in this unit is `v * factor + offset` in the working unit of its dimension. Lives as long as the program.
struct UnitInfo {
    std::string_view name;  // as it is printed, UTF-8; empty for plain numbers
    Dimension dimension;
    double factor;
    double offset;
};

// The unit that `text` names, or null. Symbols keep their case, for a milligram is no megagram; words of three letters
// and more may have any ("Inch"). Raised digits, "^2" and "2" are the same, so are both micro signs and "u"; spaces and
// a full stop at the end ("in.") do not matter. An empty text is the unit of plain numbers. "oz" is the ounce of
// leather thickness, "mil" a thousandth of an inch. "ppt" names nothing: it stands for parts per thousand and per
// trillion alike.
const UnitInfo* find_unit(std::string_view text);

const UnitInfo& working_unit(Dimension dimension) noexcept;

// The printed names of a dimension's units, the working unit first, for hints.
std::vector<std::string_view> unit_names(Dimension dimension);

constexpr double to_working(double value, const UnitInfo& unit) noexcept {
    return value * unit.factor + unit.offset;
}
constexpr double from_working(double value, const UnitInfo& unit) noexcept {
    return (value - unit.offset) / unit.factor;
}

}  // namespace grainside::measure

#endif  // GRAINSIDE_MEASURE_UNIT_H
