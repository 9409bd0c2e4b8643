// One line on standard error that shows how far a long run is. Not thread-safe.
#ifndef GRAINSIDE_TOOLS_PROGRESS_H
#define GRAINSIDE_TOOLS_PROGRESS_H

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <string>

namespace grainside::tools {

// Silent in the first second and, unless it is asked for, where standard error is no terminal or standard output is one
// (the findings themselves show the progress there). Asked for where standard error is no terminal, it is a line of its
// own every ten seconds.
class Progress {
public:
    Progress();

    // Whether it is wanted, wherever standard error leads.
    void set(bool wanted);
    // How much there is to read; 0 = not known.
    void set_total(std::uint64_t bytes) noexcept { total_ = bytes; }

    // "12,345 listings, 20.1 MB, 40 %, 61,000 a second, 99.3 MB/s, 12 s left"
    void show(std::uint64_t listings, std::uint64_t bytes);
    void show_dossiers(std::size_t done, std::size_t all);
    // Takes the line away, so that something else can be written.
    void clear();

private:
    using Clock = std::chrono::steady_clock;

    bool due();
    void show_line(const std::string& line);

    bool to_terminal_;
    bool wanted_;
    bool shown_ = false;
    std::uint64_t total_ = 0;
    Clock::time_point begun_;
    Clock::time_point next_;
};

// The line; `seconds` since the run began. Times and rates are left out while they mean nothing.
std::string progress_line(std::uint64_t listings, std::uint64_t bytes, std::uint64_t total_bytes, double seconds);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_PROGRESS_H
