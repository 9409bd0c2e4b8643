// What goes wrong, on standard error as `grainside: ...`. Not thread-safe.
#ifndef GRAINSIDE_TOOLS_DIAGNOSTICS_H
#define GRAINSIDE_TOOLS_DIAGNOSTICS_H

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "grainside/result.h"
#include "progress.h"

namespace grainside::tools {

// As it is, in full; nothing can be done where standard error itself fails.
void write_to_stderr(std::string_view text);

class Diagnostics {
public:
    void report(const Issue& issue);
    void report(std::span<const Issue> issues);
    // A fault without a place.
    void error(std::string message, std::string hint = {});

    // From now on issues are kept too, without their excerpts, for a log that tells them: the first thousand.
    void keep_issues() { keeps_ = true; }
    // With a last note of how many more there were.
    std::vector<Issue> kept() const;

    // Warnings and notes are none.
    bool any_errors() const noexcept { return errors_ != 0; }
    std::uint64_t errors() const noexcept { return errors_; }

    Progress& progress() noexcept { return progress_; }

private:
    Progress progress_;
    std::vector<Issue> kept_;
    std::size_t not_kept_ = 0;
    bool keeps_ = false;
    std::uint64_t errors_ = 0;
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_DIAGNOSTICS_H
