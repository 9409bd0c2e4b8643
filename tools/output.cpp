#include "output.h"

#include <sys/stat.h>
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

bool Output::write(std::string_view text) {
    if (text_.empty()) {
        write_all(text);
    } else {
        text_ += text;
        write_all();
    }
    return state_ == State::open;
}

void Output::write_all() {
    write_all(text_);
    text_.clear();
}

void Output::write_all(std::string_view text) {
    std::size_t written = 0;
    while (state_ == State::open && written < text.size()) {
        const ssize_t count = ::write(STDOUT_FILENO, text.data() + written, text.size() - written);
        if (count >= 0) {
            written += static_cast<std::size_t>(count);
        } else if (errno != EINTR) {
            fail(errno);
            cut_broken_line(text.substr(0, written));
        }
    }
}

// Takes the part of a line that did not find room out of the file again. What was written before ends with a line.
void Output::cut_broken_line(std::string_view written) {
    struct stat file {};
    const off_t end = ::lseek(STDOUT_FILENO, 0, SEEK_CUR);
    if (end < 0 || ::fstat(STDOUT_FILENO, &file) != 0 || !S_ISREG(file.st_mode) || file.st_size != end) return;
    const std::size_t broken = written.size() - (written.rfind('\n') + 1);  // npos + 1 = 0
    // Where that fails as well, nothing more can be done.
    if (broken != 0 && ::ftruncate(STDOUT_FILENO, end - static_cast<off_t>(broken)) != 0) return;
}

void Output::fail(int reason) {
    state_ = reason == EPIPE ? State::reader_gone : State::failed;
    failure_ = std::generic_category().message(reason);
}

}  // namespace grainside::tools
