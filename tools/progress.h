// One line on standard error that shows how far a long run is. Not thread-safe.
#ifndef GRAINSIDE_TOOLS_PROGRESS_H
#define GRAINSIDE_TOOLS_PROGRESS_H

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <string>

namespace grainside::tools {

// Silent in the first second, and always where standard error is no terminal or standard output is one (the findings
// themselves show the progress there).
class Progress {
public:
    Progress();

    void show(std::uint64_t listings, std::uint64_t bytes);
    void show_dossiers(std::size_t done, std::size_t all);
    // Takes the line away, so that something else can be written.
    void clear();

private:
    bool due();
    void show_line(const std::string& line);

    using Clock = std::chrono::steady_clock;

    bool wanted_;
    bool shown_ = false;
    Clock::time_point next_;
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_PROGRESS_H
