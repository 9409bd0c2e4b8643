// The options of commands that go through catalogs: how many threads, where to begin, whether to show progress.
#ifndef GRAINSIDE_TOOLS_RUN_OPTIONS_H
#define GRAINSIDE_TOOLS_RUN_OPTIONS_H

#include <CLI/CLI.hpp>
#include <cstddef>
#include <cstdint>

namespace grainside::tools {

struct RunOptions {
    std::size_t threads = 0;        // 0: as many as there are processors that this process may use
    std::uint64_t from_record = 1;  // of the first input
    bool progress = false;          // also where standard error is no terminal
    bool no_progress = false;       // not even on one
};

void add_run_options(CLI::App& command, RunOptions& options);

// What --threads asks for, but not more than there can be batches in inputs of `total_bytes` (0: not known) in `inputs`
// files.
std::size_t threads_of(const RunOptions& options, std::uint64_t total_bytes, std::size_t inputs);

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_RUN_OPTIONS_H
