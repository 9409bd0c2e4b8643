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

bool Progress::due() {
    if (!wanted_) return false;
    const Clock::time_point now = Clock::now();
    if (now < next_) return false;
    next_ = now + kBetween;
    return true;
}

void Progress::show_line(const std::string& line) {
    write_to_stderr(fmt::format("\r{:<{}}\r{}", "", kLineCells, line));
    shown_ = true;
}

void Progress::show(std::uint64_t listings, std::uint64_t bytes) {
    if (due()) show_line(fmt::format("{} listings, {:.1f} MB", listings, static_cast<double>(bytes) / 1e6));
}

void Progress::show_dossiers(std::size_t done, std::size_t all) {
    if (due()) show_line(fmt::format("{} of {} dossiers", done, all));
}

void Progress::clear() {
    if (!shown_) return;
    write_to_stderr(fmt::format("\r{:<{}}\r", "", kLineCells));
    shown_ = false;
}

}  // namespace grainside::tools
