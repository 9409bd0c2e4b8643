#include "measure/unit.h"

#include <algorithm>
#include <iterator>
#include <string>

#include "measure/plain_signs.h"

namespace grainside::measure {
namespace {

// The working unit of a dimension comes before its other units.
constexpr UnitInfo kUnits[] = {
    {"", Dimension::number, 1, 0},
    {"%", Dimension::share, 1, 0},
    {"\xE2\x80\xB0", Dimension::share, 0.1, 0},
    {"mg/kg", Dimension::share, 1e-4, 0},
    {"\xC2\xB5g/kg", Dimension::share, 1e-7, 0},
    {"ng/kg", Dimension::share, 1e-10, 0},
    {"mm", Dimension::length, 1, 0},
    {"\xC2\xB5m", Dimension::length, 1e-3, 0},
    {"nm", Dimension::length, 1e-6, 0},
    {"cm", Dimension::length, 10, 0},
    {"m", Dimension::length, 1000, 0},
    {"in", Dimension::length, 25.4, 0},
    {"mil", Dimension::length, 0.0254, 0},
    {"\xC2\xB5in", Dimension::length, 2.54e-5, 0},
    {"oz", Dimension::length, 25.4 / 64, 0},
    {"iron", Dimension::length, 25.4 / 48, 0},
    {"ft", Dimension::length, 304.8, 0},
    {"yd", Dimension::length, 914.4, 0},
    {"g", Dimension::mass, 1, 0},
    {"mg", Dimension::mass, 1e-3, 0},
    {"\xC2\xB5g", Dimension::mass, 1e-6, 0},
    {"kg", Dimension::mass, 1000, 0},
    {"lb", Dimension::mass, 453.59237, 0},
    {"g/cm\xC2\xB3", Dimension::density, 1, 0},
    {"kg/m\xC2\xB3", Dimension::density, 1e-3, 0},
    {"\xC2\xB0"
     "C",
     Dimension::temperature, 1, 0},
    {"K", Dimension::temperature, 1, -273.15},
    {"\xC2\xB0"
     "F",
     Dimension::temperature, 5.0 / 9, -160.0 / 9},
    {"h", Dimension::time, 1, 0},
    {"s", Dimension::time, 1.0 / 3600, 0},
    {"min", Dimension::time, 1.0 / 60, 0},
    {"d", Dimension::time, 24, 0},
    {"weeks", Dimension::time, 168, 0},
    {"months", Dimension::time, 730.5, 0},
    {"years", Dimension::time, 8766, 0},
    {"\xC2\xB5g/cm\xC2\xB2/week", Dimension::release_rate, 1, 0},
    {"mg/cm\xC2\xB2/week", Dimension::release_rate, 1000, 0},
    {"N/cm", Dimension::force_per_width, 1, 0},
    {"N/mm", Dimension::force_per_width, 10, 0},
    {"N/m", Dimension::force_per_width, 0.01, 0},
    {"N", Dimension::force, 1, 0},
    {"mN", Dimension::force, 1e-3, 0},
    {"kN", Dimension::force, 1000, 0},
    {"kgf", Dimension::force, 9.80665, 0},
    {"lbf", Dimension::force, 0.45359237 * 9.80665, 0},
    {"g/m\xC2\xB2", Dimension::mass_per_area, 1, 0},
    {"kg/m\xC2\xB2", Dimension::mass_per_area, 1000, 0},
    {"mg/cm\xC2\xB2", Dimension::mass_per_area, 10, 0},
    // A sixteenth of a pound on a square yard of 0.9144 m by 0.9144 m.
    {"oz/yd\xC2\xB2", Dimension::mass_per_area, 453.59237 / 16 / (0.9144 * 0.9144), 0},
    {"dm\xC2\xB2", Dimension::area, 1, 0},
    {"cm\xC2\xB2", Dimension::area, 0.01, 0},
    {"m\xC2\xB2", Dimension::area, 100, 0},
    // 3.048 dm squared, 0.254 dm squared, 9.144 dm squared.
    {"sq ft", Dimension::area, 9.290304, 0},
    {"sq in", Dimension::area, 0.064516, 0},
    {"sq yd", Dimension::area, 83.612736, 0},
    {"hides", Dimension::hides, 1, 0},
    {"sides", Dimension::hides, 0.5, 0},
};

struct Spelling {
    std::string_view text;  // in plain signs, without spaces and "^"
    std::string_view name;
};

// Spellings beyond the printed names.
constexpr Spelling kSpellings[] = {
    {"percent", "%"},
    {"pct", "%"},
    {"ppm", "mg/kg"},
    {"ug/g", "mg/kg"},
    {"ppb", "\xC2\xB5g/kg"},
    {"millimetre", "mm"},
    {"millimetres", "mm"},
    {"millimeter", "mm"},
    {"millimeters", "mm"},
    {"micron", "\xC2\xB5m"},
    {"microns", "\xC2\xB5m"},
    {"micrometre", "\xC2\xB5m"},
    {"micrometres", "\xC2\xB5m"},
    {"micrometer", "\xC2\xB5m"},
    {"micrometers", "\xC2\xB5m"},
    {"inch", "in"},
    {"inches", "in"},
    {"\"", "in"},
    {"mils", "mil"},
    {"thou", "mil"},
    {"microinch", "\xC2\xB5in"},
    {"microinches", "\xC2\xB5in"},
    {"Oz", "oz"},
    {"OZ", "oz"},
    {"ounce", "oz"},
    {"ounces", "oz"},
    {"irons", "iron"},
    {"gram", "g"},
    {"grams", "g"},
    {"g/cc", "g/cm\xC2\xB3"},
    {"g/ml", "g/cm\xC2\xB3"},
    {"g/mL", "g/cm\xC2\xB3"},
    {"C",
     "\xC2\xB0"
     "C"},
    {"F",
     "\xC2\xB0"
     "F"},
    {"hr", "h"},
    {"hrs", "h"},
    {"hour", "h"},
    {"hours", "h"},
    {"sec", "s"},
    {"second", "s"},
    {"seconds", "s"},
    {"minute", "min"},
    {"minutes", "min"},
    {"day", "d"},
    {"days", "d"},
    {"week", "weeks"},
    {"wk", "weeks"},
    {"month", "months"},
    {"year", "years"},
    {"yr", "years"},
    {"ug/cm2/wk", "\xC2\xB5g/cm\xC2\xB2/week"},
    {"gsm", "g/m\xC2\xB2"},
    {"foot", "ft"},
    {"feet", "ft"},
    {"yard", "yd"},
    {"yards", "yd"},
    {"lbs", "lb"},
    {"pound", "lb"},
    {"pounds", "lb"},
    {"metre", "m"},
    {"metres", "m"},
    {"meter", "m"},
    {"meters", "m"},
    {"sq.ft", "sq ft"},
    {"ft2", "sq ft"},
    {"squarefoot", "sq ft"},
    {"squarefeet", "sq ft"},
    {"sq.in", "sq in"},
    {"in2", "sq in"},
    {"squareinch", "sq in"},
    {"squareinches", "sq in"},
    {"sq.yd", "sq yd"},
    {"yd2", "sq yd"},
    {"squareyard", "sq yd"},
    {"squareyards", "sq yd"},
    {"sqm", "m\xC2\xB2"},
    {"sq.m", "m\xC2\xB2"},
    {"squaremetre", "m\xC2\xB2"},
    {"squaremetres", "m\xC2\xB2"},
    {"squaremeter", "m\xC2\xB2"},
    {"squaremeters", "m\xC2\xB2"},
    {"hide", "hides"},
    {"side", "sides"},
};

std::string without_spaces_and_carets(std::string_view text) {
    std::string kept;
    for (const char c : text) {
        if (c != ' ' && c != '^') kept += c;
    }
    return kept;
}

std::string plain_name(std::string_view name) {
    return without_spaces_and_carets(plain_signs(name).value_or(std::string()));
}

const UnitInfo* unit_named(std::string_view name) {
    const auto* const unit =
        std::find_if(std::begin(kUnits), std::end(kUnits), [&](const UnitInfo& known) { return known.name == name; });
    return unit == std::end(kUnits) ? nullptr : unit;
}

const UnitInfo* unit_written(std::string_view plain) {
    for (const UnitInfo& unit : kUnits) {
        if (plain_name(unit.name) == plain) return &unit;
    }
    for (const Spelling& spelling : kSpellings) {
        if (spelling.text == plain) return unit_named(spelling.name);
    }
    return nullptr;
}

// The text in small letters where it is a word; empty where it is a symbol, whose case says something.
std::string small_word(std::string_view text) {
    constexpr std::size_t kShortestWord = 3;
    if (text.size() < kShortestWord) return {};
    std::string small;
    for (const char c : text) {
        const bool capital = c >= 'A' && c <= 'Z';
        if (!capital && (c < 'a' || c > 'z')) return {};
        small += capital ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return small;
}

}  // namespace

std::string_view name_of(Dimension dimension) noexcept {
    switch (dimension) {
        case Dimension::number:
            return "number";
        case Dimension::share:
            return "share";
        case Dimension::length:
            return "length";
        case Dimension::mass:
            return "mass";
        case Dimension::density:
            return "density";
        case Dimension::temperature:
            return "temperature";
        case Dimension::time:
            return "time";
        case Dimension::release_rate:
            return "release rate";
        case Dimension::force_per_width:
            return "force per width";
        case Dimension::force:
            return "force";
        case Dimension::mass_per_area:
            return "mass per area";
        case Dimension::area:
            return "area";
        case Dimension::hides:
            return "number of hides";
    }
    return {};
}

const UnitInfo* find_unit(std::string_view text) {
    const std::optional<std::string> signs = plain_signs(text);
    if (!signs) return nullptr;
    std::string plain = without_spaces_and_carets(*signs);
    if (plain.ends_with('.')) plain.pop_back();
    if (const UnitInfo* const unit = unit_written(plain)) return unit;
    const std::string small = small_word(plain);
    return small.empty() ? nullptr : unit_written(small);
}

const UnitInfo& working_unit(Dimension dimension) noexcept {
    return *std::find_if(std::begin(kUnits), std::end(kUnits),
                         [&](const UnitInfo& unit) { return unit.dimension == dimension; });
}

std::vector<std::string_view> unit_names(Dimension dimension) {
    std::vector<std::string_view> names;
    for (const UnitInfo& unit : kUnits) {
        if (unit.dimension == dimension) names.push_back(unit.name);
    }
    return names;
}

}  // namespace grainside::measure
