// Runs a program as a shell would and tells what it did.
#ifndef GRAINSIDE_TESTS_SUPPORT_PROCESS_RUNNER_H
#define GRAINSIDE_TESTS_SUPPORT_PROCESS_RUNNER_H

#include <chrono>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace grainside::tests {

// Where a stream of the program leads.
enum class Stream {
    pipe,         // it is read to its end
    terminal,     // a pseudo-terminal of 100 columns, read to its end
    gone_reader,  // a pipe that nobody reads
    first_line,   // a pipe whose reader goes after the first line, as `head -n 1` does
    full_disk,    // /dev/full
    not_open,
};

struct ProcessCall {
    std::filesystem::path program;
    std::vector<std::string> arguments;
    std::filesystem::path folder;                    // to run in
    std::map<std::string, std::string> environment;  // besides PATH; nothing else is passed on
    std::vector<std::string> input;                  // written to standard input one after the other ...
    std::chrono::milliseconds pause{0};              // ... with pauses between
    int signal = 0;  // sent once, when the output holds `signal_at`; standard input stays open
    std::string signal_at;
    Stream out = Stream::pipe;
    Stream err = Stream::pipe;
};

struct ProcessResult {
    std::string out;
    std::string err;
    int status = -1;  // the exit status; -1 where a signal ended it
    int signal = 0;
    long peak_kibibytes = 0;  // of resident memory
};

// Throws std::runtime_error where the program cannot be started, or after 100 seconds.
ProcessResult run_process(const ProcessCall& call);

}  // namespace grainside::tests

#endif  // GRAINSIDE_TESTS_SUPPORT_PROCESS_RUNNER_H
