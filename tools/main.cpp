#include <csignal>
#include <exception>
#include <new>
#include <string>

#include "command_line.h"
#include "diagnostics.h"
#include "exit_status.h"

int main(int argc, char** argv) {
    using namespace grainside::tools;
    // A reader that has gone shows as an error of the write.
    std::signal(SIGPIPE, SIG_IGN);
    std::signal(SIGXFSZ, SIG_IGN);  // a file that may not grow further, likewise
    try {
        return run_command_line(argc, argv);
    } catch (const std::bad_alloc&) {
        write_to_stderr("grainside: error: memory has run out\n");
    } catch (const std::exception& fault) {
        write_to_stderr(std::string("grainside: error: ") + fault.what() + '\n');
    }
    Outcome outcome;
    outcome.any_error = true;
    return exit_status(outcome);
}
