#include "document/day.h"

#include <algorithm>
#include <chrono>
#include <cstddef>

namespace grainside::document {
namespace {

bool is_number(std::string_view text) noexcept {
    return std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

// REQUIRES: digits only.
unsigned value_of(std::string_view text) noexcept {
    unsigned value = 0;
    for (const char c : text) value = value * 10 + static_cast<unsigned>(c - '0');
    return value;
}

}  // namespace

bool is_written_as_day(std::string_view text) noexcept {
    return text.size() == 10 && text[4] == '-' && text[7] == '-' && is_number(text.substr(0, 4)) &&
           is_number(text.substr(5, 2)) && is_number(text.substr(8, 2));
}

bool is_day(std::string_view text) noexcept {
    if (!is_written_as_day(text)) return false;
    const unsigned year = value_of(text.substr(0, 4));
    return year > 0 && std::chrono::year_month_day(std::chrono::year(static_cast<int>(year)),
                                                   std::chrono::month(value_of(text.substr(5, 2))),
                                                   std::chrono::day(value_of(text.substr(8, 2))))
                           .ok();
}

}  // namespace grainside::document
