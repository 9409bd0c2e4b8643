// Standard output, buffered, with every write checked. Not thread-safe.
#ifndef GRAINSIDE_TOOLS_OUTPUT_H
#define GRAINSIDE_TOOLS_OUTPUT_H

#include <string>

namespace grainside::tools {

// SIGPIPE must be ignored, so that a reader that goes away is seen as an error of a write.
class Output {
public:
    enum class State {
        open,
        reader_gone,  // the pipe was closed at its other end: no fault of ours
        failed,       // a full disk and the like; failure() says why
    };

    Output();

    // What is to be written is appended here.
    std::string& text() noexcept { return text_; }

    // Writes where enough has come together, and at once to a terminal. False: nothing more can be written, so stop.
    bool keep_going();
    // Writes all. Nothing is lost silently: what the system reports late, when closing, counts too.
    State finish();

    State state() const noexcept { return state_; }
    const std::string& failure() const noexcept { return failure_; }

private:
    void write_all();
    void fail(int reason);

    std::string text_;
    std::string failure_;
    State state_ = State::open;
    bool to_terminal_ = false;
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_OUTPUT_H
