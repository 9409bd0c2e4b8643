#include "terminal.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cstddef>
#include <cstdlib>

namespace grainside::tools {
namespace {

constexpr std::size_t kUsualWidth = 80;
constexpr std::size_t kNarrowest = 40;
constexpr std::size_t kWidest = 120;  // longer lines are hard to read

std::string_view environment(const char* name) {
    const char* value = std::getenv(name);
    return value == nullptr ? std::string_view() : std::string_view(value);
}

std::size_t terminal_width() {
    winsize size{};
    if (::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 || size.ws_col == 0) return kUsualWidth;
    return std::clamp<std::size_t>(size.ws_col, kNarrowest, kWidest);
}

}  // namespace

ViewOptions view_options(std::string_view colour) {
    const bool terminal = ::isatty(STDOUT_FILENO) == 1;
    const bool wanted = terminal && environment("NO_COLOR").empty() && environment("TERM") != "dumb";
    ViewOptions options;
    options.colour = colour == "always" || (colour == "auto" && wanted);
    options.width = terminal ? terminal_width() : kUsualWidth;
    return options;
}

}  // namespace grainside::tools
