#include "run_options.h"

#include <algorithm>
#include <limits>
#include <thread>

#include "listing/listing_batches.h"
#include "pipeline/ordered_run.h"

namespace grainside::tools {

void add_run_options(CLI::App& command, RunOptions& options) {
    constexpr auto kLargest = std::numeric_limits<std::uint64_t>::max();
    command
        .add_option("--threads", options.threads,
                    "Work with so many threads, at most 256 (default: as many\n"
                    "as there are processors); the output is the same")
        ->type_name("N")
        ->check(CLI::Range(std::size_t{1}, kMaxThreads).description(""));
    command
        .add_option("--from-record", options.from_record,
                    "Pass over the records of the first input before this\n"
                    "one, to go on with a run that was stopped")
        ->type_name("N")
        ->check(CLI::Range(std::uint64_t{1}, kLargest).description(""));
    CLI::Option* show = command.add_flag("--progress", options.progress,
                                         "Show on standard error how far the run is, also where\n"
                                         "that is no terminal");
    command.add_flag("--no-progress", options.no_progress, "Do not show it on a terminal either")->excludes(show);
}

std::size_t threads_of(const RunOptions& options, std::uint64_t total_bytes, std::size_t inputs) {
    const std::size_t processors = std::max(1U, std::thread::hardware_concurrency());
    std::size_t threads = std::min(options.threads == 0 ? processors : options.threads, kMaxThreads);
    if (total_bytes != 0) {
        const std::uint64_t batches = total_bytes / BatchOptions().batch_bytes + inputs;
        if (batches < threads) threads = static_cast<std::size_t>(batches);
    }
    return std::max<std::size_t>(threads, 1);
}

}  // namespace grainside::tools
