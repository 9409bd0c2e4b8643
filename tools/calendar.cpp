#include "calendar.h"

#include <fmt/format.h>

#include <chrono>
#include <ctime>

namespace grainside::tools {

std::string today() {
    const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
    std::tm day{};
    ::localtime_r(&now, &day);
    return fmt::format("{:04}-{:02}-{:02}", day.tm_year + 1900, day.tm_mon + 1, day.tm_mday);
}

}  // namespace grainside::tools
