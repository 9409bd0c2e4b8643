// Standard output, buffered, with every write checked. Not thread-safe.
#ifndef GRAINSIDE_TOOLS_OUTPUT_H
#define GRAINSIDE_TOOLS_OUTPUT_H

#include <string>
#include <string_view>

namespace grainside::tools {

// SIGPIPE and SIGXFSZ must be ignored, so that a reader that goes away and a file that may not grow are seen as errors
// of a write. Where a disk is full, a file that this program appends to ends with a whole line all the same.
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

    // Writes what text() holds, and `text` behind it, with one call of the system where it takes all. False as for
    // keep_going.
    bool write(std::string_view text);

    // Writes where enough has come together, and at once to a terminal. False: nothing more can be written, so stop.
    bool keep_going();
    // Writes all. Nothing is lost silently: what the system reports late, when closing, counts too.
    State finish();

    // Findings are read as they come.
    bool to_terminal() const noexcept { return to_terminal_; }
    State state() const noexcept { return state_; }
    const std::string& failure() const noexcept { return failure_; }

private:
    void write_all();
    void write_all(std::string_view text);
    void cut_broken_line(std::string_view written);
    void fail(int reason);

    std::string text_;
    std::string failure_;
    State state_ = State::open;
    bool to_terminal_ = false;
};

}  // namespace grainside::tools

#endif  // GRAINSIDE_TOOLS_OUTPUT_H
