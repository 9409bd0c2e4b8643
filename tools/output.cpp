#include "output.h"

#include <unistd.h>

#include <cerrno>
#include <cstddef>
#include <system_error>

namespace grainside::tools {
namespace {

constexpr std::size_t kWriteBytes = std::size_t{256} << 10;

}  // namespace

Output::Output() : to_terminal_(::isatty(STDOUT_FILENO) == 1) {}

bool Output::keep_going() {
    if (text_.size() >= kWriteBytes || to_terminal_) write_all();
    return state_ == State::open;
}

Output::State Output::finish() {
    write_all();
    // Some file systems tell of a full disk only here. EBADF with nothing written: there was no standard output.
    if (state_ == State::open && ::close(STDOUT_FILENO) != 0 && errno != EBADF) fail(errno);
    return state_;
}

void Output::write_all() {
    std::size_t written = 0;
    while (state_ == State::open && written < text_.size()) {
        const ssize_t count = ::write(STDOUT_FILENO, text_.data() + written, text_.size() - written);
        if (count >= 0) {
            written += static_cast<std::size_t>(count);
        } else if (errno != EINTR) {
            fail(errno);
        }
    }
    text_.clear();
}

void Output::fail(int reason) {
    state_ = reason == EPIPE ? State::reader_gone : State::failed;
    failure_ = std::generic_category().message(reason);
}

}  // namespace grainside::tools
