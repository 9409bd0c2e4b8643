#include "run_options.h"

#include <algorithm>
#include <limits>
#include <thread>

#include "grainside/listing_batches.h"
#include "grainside/ordered_run.h"

namespace grainside::tools {

void add_run_options(CLI::App& command, RunOptions& options) {
    command
        .add_option("--threads", options.threads,
                    "Work with so many threads (default: as many as there\nare processors); the output is the same")
        ->type_name("N")
        ->check(CLI::Range(std::size_t{1}, kMaxThreads));
    command
        .add_option("--from-record", options.from_record,
                    "Pass over the records of the first input before this\none, to go on with a run that was stopped")
        ->type_name("N")
        ->check(CLI::Range(std::uint64_t{1}, std::numeric_limits<std::uint64_t>::max()));
    command.add_flag("--progress,!--no-progress", options.progress,
                     "Show on standard error how far the run is (default: on\na terminal), or do not");
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
