#include "progress.h"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cmath>

#include "diagnostics.h"
#include "grouped_number.h"

namespace grainside::tools {
namespace {

constexpr auto kQuietTime = std::chrono::seconds(1);
constexpr auto kBetween = std::chrono::milliseconds(250);
constexpr auto kBetweenLines = std::chrono::seconds(10);
// A line that is longer is cut, so that it never takes two of a terminal; spaces clear a line on every one.
constexpr std::size_t kLineCells = 79;

// "45 s", "12 min", "3 h 20 min"
std::string time_text(double seconds) {
    const auto whole = static_cast<std::uint64_t>(std::ceil(seconds));
    if (whole < 100) return fmt::format("{} s", whole);
    const std::uint64_t minutes = (whole + 59) / 60;
    if (minutes < 100) return fmt::format("{} min", minutes);
    return fmt::format("{} h {} min", grouped(minutes / 60), minutes % 60);
}

// Two digits: what a rate shows changes less often then.
std::uint64_t rounded_rate(double rate) {
    double unit = 1;
    while (rate / unit >= 100) unit *= 10;
    return static_cast<std::uint64_t>(std::lround(rate / unit) * std::lround(unit));
}

}  // namespace

std::string progress_line(std::uint64_t listings, std::uint64_t bytes, std::uint64_t total_bytes, double seconds) {
    std::string line = fmt::format("{} listings, {:.1f} MB", grouped(listings), static_cast<double>(bytes) / 1e6);
    const bool has_total = total_bytes != 0 && bytes <= total_bytes;
    if (has_total)
        line += fmt::format(", {} %", static_cast<std::uint64_t>(100.0 * static_cast<double>(bytes) /
                                                                 static_cast<double>(total_bytes)));
    if (seconds < 1) return line;
    const double rate = static_cast<double>(bytes) / seconds;
    line += fmt::format(", {} a second, {:.1f} MB/s", grouped(rounded_rate(static_cast<double>(listings) / seconds)),
                        rate / 1e6);
    if (has_total && rate > 0) line += ", " + time_text(static_cast<double>(total_bytes - bytes) / rate) + " left";
    return line;
}

Progress::Progress()
    : to_terminal_(::isatty(STDERR_FILENO) == 1),
      wanted_(to_terminal_ && ::isatty(STDOUT_FILENO) != 1),
      begun_(Clock::now()),
      next_(begun_ + kQuietTime) {}

void Progress::set(bool wanted) {
    wanted_ = wanted;
    if (!to_terminal_) next_ = begun_ + kBetweenLines;
}

bool Progress::due() {
    if (!wanted_) return false;
    const Clock::time_point now = Clock::now();
    if (now < next_) return false;
    next_ = to_terminal_ ? now + kBetween : now + kBetweenLines;
    return true;
}

void Progress::show_line(const std::string& line) {
    if (to_terminal_) {
        write_to_stderr(fmt::format("\r{:<{}.{}}", line, kLineCells, kLineCells));
        shown_ = true;
    } else {
        write_to_stderr("grainside: " + line + '\n');
    }
}

void Progress::show(std::uint64_t listings, std::uint64_t bytes) {
    if (!due()) return;
    show_line(progress_line(listings, bytes, total_, std::chrono::duration<double>(Clock::now() - begun_).count()));
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
