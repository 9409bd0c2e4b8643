// What the program tells the shell.
#ifndef GRAINSIDE_TOOLS_EXIT_STATUS_H
#define GRAINSIDE_TOOLS_EXIT_STATUS_H

namespace grainside::tools {

struct Outcome {
    bool reached = false;      // a finding at or above the grade asked for, or a fault of a proof
    bool any_error = false;    // a wrong call, an unreadable file or record, output that could not be written
    bool reader_gone = false;  // whoever read standard output has stopped, as `head` does
};

// 2 for any error; 0 where the reader has gone, because nobody can act on the rest; 1 where something was reached; else
// 0. The only place that decides.
int exit_status(const Outcome& outcome) noexcept;

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_EXIT_STATUS_H
