#include "calendar.h"

#include <fmt/format.h>

#include <chrono>
#include <cstddef>
#include <ctime>

namespace grainside::tools {
namespace {

// -1 where a character is no digit.
int number_at(std::string_view text, std::size_t at, std::size_t length) {
    int number = 0;
    for (const char digit : text.substr(at, length)) {
        if (digit < '0' || digit > '9') return -1;
        number = number * 10 + (digit - '0');
    }
    return number;
}

}  // namespace

std::string today() {
    const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
    std::tm day{};
    ::localtime_r(&now, &day);
    return fmt::format("{:04}-{:02}-{:02}", day.tm_year + 1900, day.tm_mon + 1, day.tm_mday);
}

bool is_day(std::string_view text) noexcept {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
    const int year = number_at(text, 0, 4);
    const int month = number_at(text, 5, 2);
    const int day = number_at(text, 8, 2);
    if (year < 1 || month < 1 || day < 1) return false;
    return std::chrono::year_month_day(std::chrono::year(year), std::chrono::month(static_cast<unsigned>(month)),
                                       std::chrono::day(static_cast<unsigned>(day)))
        .ok();
}

}  // namespace grainside::tools
