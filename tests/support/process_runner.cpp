#include "support/process_runner.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/ioctl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <termios.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <stdexcept>
#include <string_view>
#include <system_error>
#include <utility>

namespace grainside::tests {
namespace {

using Clock = std::chrono::steady_clock;

constexpr auto kPatience = std::chrono::seconds(100);
constexpr unsigned short kTerminalColumns = 100;
constexpr int kCannotStart = 127;

[[noreturn]] void fail(const char* what) {
    throw std::runtime_error(std::string(what) + ": " + std::generic_category().message(errno));
}

class Descriptor {
public:
    explicit Descriptor(int number = -1) : number_(number) {}
    Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
    Descriptor& operator=(Descriptor&& other) noexcept {
        std::swap(number_, other.number_);
        return *this;
    }
    ~Descriptor() { close(); }

    void close() {
        if (number_ >= 0) ::close(number_);
        number_ = -1;
    }
    int number() const noexcept { return number_; }
    bool is_open() const noexcept { return number_ >= 0; }

private:
    int number_;
};

struct Ends {
    Descriptor ours = Descriptor();
    Descriptor childs = Descriptor();
};

Ends open_pipe(bool we_write) {
    std::array<int, 2> ends{};
    if (::pipe2(ends.data(), O_CLOEXEC) != 0) fail("pipe");
    Descriptor reading(ends[0]);
    Descriptor writing(ends[1]);
    if (we_write) return {std::move(writing), std::move(reading)};
    return {std::move(reading), std::move(writing)};
}

Ends open_terminal() {
    Descriptor ours(::posix_openpt(O_RDWR | O_NOCTTY | O_CLOEXEC));
    if (!ours.is_open() || ::grantpt(ours.number()) != 0 || ::unlockpt(ours.number()) != 0) fail("terminal");
    Descriptor childs(::open(::ptsname(ours.number()), O_RDWR | O_NOCTTY | O_CLOEXEC));
    if (!childs.is_open()) fail("terminal");
    winsize size{};
    size.ws_col = kTerminalColumns;
    size.ws_row = 50;
    ::ioctl(childs.number(), TIOCSWINSZ, &size);
    termios settings{};
    ::tcgetattr(childs.number(), &settings);
    settings.c_oflag &= ~static_cast<tcflag_t>(OPOST);  // a newline stays one
    ::tcsetattr(childs.number(), TCSANOW, &settings);
    return {std::move(ours), std::move(childs)};
}

Ends open_stream(Stream stream) {
    switch (stream) {
        case Stream::terminal:
            return open_terminal();
        case Stream::gone_reader: {
            Ends ends = open_pipe(false);
            ends.ours.close();
            return ends;
        }
        case Stream::full_disk: {
            Ends ends;
            ends.childs = Descriptor(::open("/dev/full", O_WRONLY | O_CLOEXEC));
            if (!ends.childs.is_open()) fail("/dev/full");
            return ends;
        }
        case Stream::not_open:
            return {};
        case Stream::pipe:
        case Stream::first_line:
            break;
    }
    return open_pipe(false);
}

std::vector<char*> pointers(std::vector<std::string>& texts) {
    std::vector<char*> list;
    for (std::string& text : texts) list.push_back(text.data());
    list.push_back(nullptr);
    return list;
}

void place(const Descriptor& from, int number) {
    if (from.is_open()) {
        ::dup2(from.number(), number);
    } else {
        ::close(number);
    }
}

class Run {
public:
    explicit Run(const ProcessCall& call)
        : call_(call), in_(open_pipe(true)), out_(open_stream(call.out)), err_(open_stream(call.err)) {}

    ProcessResult run() {
        start();
        transfer();
        return wait();
    }

private:
    void start() {
        std::vector<std::string> arguments = {call_.program.string()};
        arguments.insert(arguments.end(), call_.arguments.begin(), call_.arguments.end());
        std::vector<std::string> environment = {"PATH=/usr/bin:/bin"};
        for (const auto& [name, value] : call_.environment) environment.push_back(name + '=' + value);
        const std::vector<char*> argument_list = pointers(arguments);
        const std::vector<char*> environment_list = pointers(environment);
        child_ = ::fork();
        if (child_ < 0) fail("fork");
        if (child_ == 0) {
            place(in_.childs, STDIN_FILENO);
            place(out_.childs, STDOUT_FILENO);
            place(err_.childs, STDERR_FILENO);
            std::signal(SIGPIPE, SIG_DFL);
            if (!call_.folder.empty() && ::chdir(call_.folder.c_str()) != 0) ::_exit(kCannotStart);
            ::execve(call_.program.c_str(), argument_list.data(), environment_list.data());
            ::_exit(kCannotStart);
        }
        in_.childs.close();
        out_.childs.close();
        err_.childs.close();
        ::fcntl(in_.ours.number(), F_SETFL, O_NONBLOCK);
    }

    void transfer() {
        next_input_ = Clock::now();
        while (in_.ours.is_open() || out_.ours.is_open() || err_.ours.is_open()) {
            if (Clock::now() - begun_ > kPatience) {
                ::kill(child_, SIGKILL);
                ::waitpid(child_, nullptr, 0);
                throw std::runtime_error("the program does not come to an end");
            }
            const bool may_write = in_.ours.is_open() && Clock::now() >= next_input_;
            std::array<pollfd, 3> wanted = {pollfd{may_write ? in_.ours.number() : -1, POLLOUT, 0},
                                            pollfd{out_.ours.number(), POLLIN, 0},
                                            pollfd{err_.ours.number(), POLLIN, 0}};
            ::poll(wanted.data(), wanted.size(), 20);
            if (wanted[0].revents != 0) write_input();
            if (wanted[1].revents != 0) read_from(out_.ours, result_.out);
            if (wanted[2].revents != 0) read_from(err_.ours, result_.err);
            if (call_.signal != 0 && !signalled_ && result_.out.find(call_.signal_at) != std::string::npos) {
                signalled_ = true;
                ::kill(child_, call_.signal);
            }
            // Of a program that is to end while its input is open.
            if (call_.signal != 0 && !out_.ours.is_open() && !err_.ours.is_open()) in_.ours.close();
            if (call_.out == Stream::first_line && result_.out.find('\n') != std::string::npos) out_.ours.close();
        }
    }

    void write_input() {
        if (part_ == call_.input.size()) {
            if (call_.signal == 0) in_.ours.close();
            next_input_ = Clock::now() + std::chrono::milliseconds(20);
            return;
        }
        const std::string_view rest = std::string_view(call_.input[part_]).substr(written_);
        const ssize_t count = ::write(in_.ours.number(), rest.data(), rest.size());
        if (count < 0 && errno != EAGAIN && errno != EINTR) {
            in_.ours.close();  // the program does not want more
            return;
        }
        if (count > 0) written_ += static_cast<std::size_t>(count);
        if (written_ < call_.input[part_].size()) return;
        ++part_;
        written_ = 0;
        if (part_ < call_.input.size()) next_input_ = Clock::now() + call_.pause;
    }

    static void read_from(Descriptor& from, std::string& into) {
        std::array<char, 65536> block{};
        const ssize_t count = ::read(from.number(), block.data(), block.size());
        if (count > 0) {
            into.append(block.data(), static_cast<std::size_t>(count));
        } else if (count == 0 || errno != EINTR) {
            from.close();  // of a terminal the end is an error
        }
    }

    ProcessResult wait() {
        int status = 0;
        rusage usage{};
        if (::wait4(child_, &status, 0, &usage) != child_) fail("wait");
        result_.peak_kibibytes = usage.ru_maxrss;
        if (WIFSIGNALED(status)) result_.signal = WTERMSIG(status);
        if (WIFEXITED(status)) result_.status = WEXITSTATUS(status);
        if (result_.status == kCannotStart) throw std::runtime_error("cannot start " + call_.program.string());
        return std::move(result_);
    }

    const ProcessCall& call_;
    Ends in_, out_, err_;
    pid_t child_ = -1;
    std::size_t part_ = 0;
    std::size_t written_ = 0;
    bool signalled_ = false;
    Clock::time_point begun_ = Clock::now();
    Clock::time_point next_input_;
    ProcessResult result_;
};

}  // namespace

ProcessResult run_process(const ProcessCall& call) {
    std::signal(SIGPIPE, SIG_IGN);
    return Run(call).run();
}

}  // namespace grainside::tests
