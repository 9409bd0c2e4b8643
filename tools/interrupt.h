// Stopping in good order when the user or the system asks for it (SIGINT, SIGTERM).
#ifndef GRAINSIDE_TOOLS_INTERRUPT_H
#define GRAINSIDE_TOOLS_INTERRUPT_H

#include <atomic>

namespace grainside::tools {

// While it lives, the first of these signals only asks to stop, and a second one ends the program at once. A signal
// that was ignored when the program began stays so. At most one object at a time; for the main thread.
class Interrupt {
public:
    Interrupt();
    Interrupt(const Interrupt&) = delete;
    Interrupt& operator=(const Interrupt&) = delete;
    ~Interrupt();

    // Set when something asks to stop, and from then on.
    const std::atomic<bool>& stop() const noexcept;
    // Can be read from then on; -1 where the system gave none.
    int wake_descriptor() const noexcept;
    // Asks to stop as a signal does, for a reason of our own. From any thread.
    void ask_to_stop() noexcept;

    // Whether a signal came.
    bool by_signal() const noexcept;
    // Ends the program as the signal would have, if one came, so that the shell sees it; else gives `status` back.
    // REQUIRES: everything is written.
    int end(int status);
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_INTERRUPT_H
