#include "progress.h"

#include <fmt/format.h>
#include <unistd.h>

#include "diagnostics.h"

namespace grainside::tools {
namespace {

constexpr auto kQuietTime = std::chrono::seconds(1);
constexpr auto kBetween = std::chrono::milliseconds(250);
// As wide as the longest line; spaces clear a line on every terminal.
constexpr int kLineCells = 60;

}  // namespace

Progress::Progress()
    : wanted_(::isatty(STDERR_FILENO) == 1 && ::isatty(STDOUT_FILENO) != 1), next_(Clock::now() + kQuietTime) {}

void Progress::show(std::uint64_t listings, std::uint64_t bytes) {
    if (!wanted_) return;
    const Clock::time_point now = Clock::now();
    if (now < next_) return;
    next_ = now + kBetween;
    const std::string line = fmt::format("{} listings, {:.1f} MB", listings, static_cast<double>(bytes) / 1e6);
    write_to_stderr(fmt::format("\r{:<{}}\r{}", "", kLineCells, line));
    shown_ = true;
}

void Progress::clear() {
    if (!shown_) return;
    write_to_stderr(fmt::format("\r{:<{}}\r", "", kLineCells));
    shown_ = false;
}

}  // namespace grainside::tools
