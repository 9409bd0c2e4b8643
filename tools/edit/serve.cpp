#include "edit/serve.h"

#include <poll.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <chrono>
#include <csignal>
#include <memory>
#include <string>
#include <string_view>
#include <utility>

#include "diagnostics.h"
#include "edit/message_framing.h"
#include "edit/session.h"
#include "output.h"

namespace grainside::tools::edit {
namespace {

// Messages that wait are held in memory; the client waits for those to be handled before more is read.
constexpr int kMostReadAhead = 1000;
// A client that sends change after change is told something all the same.
constexpr std::chrono::milliseconds kLongestSilence{300};
constexpr int kAliveCheckMilliseconds = 5000;
constexpr int kFailed = 2;

void log_line(std::string_view text) {
    write_to_stderr("grainside: edit: " + std::string(text) + '\n');
}

class Server {
public:
    Server(WorkspaceOptions options, std::int64_t client_process)
        : session_(std::move(options), log_line), client_process_(client_process) {}

    int run() {
        for (;;) {
            read_ahead();
            if (failed_) return kFailed;
            if (session_.any_waiting()) {
                session_.handle_next(output_.text());
                if (!write()) return ended();
                if (session_.exit_status()) return *session_.exit_status();
                if (session_.any_waiting() && Clock::now() - told_ < kLongestSilence) continue;
            }
            tell();
            if (!write()) return ended();
            if (session_.any_waiting()) continue;
            if (at_end_) return end_of_input();
            if (!wait()) return ended();
        }
    }

private:
    using Clock = std::chrono::steady_clock;

    void tell() {
        told_ = Clock::now();
        if (session_.any_to_publish()) session_.publish(output_.text());
    }

    // What is there already, so that a cancellation reaches a request that waits.
    void read_ahead() {
        for (int i = 0; i < kMostReadAhead && !at_end_ && !failed_ && is_readable(0); ++i) read();
    }

    bool is_readable(int milliseconds) {
        pollfd input{STDIN_FILENO, POLLIN, 0};
        return ::poll(&input, 1, milliseconds) > 0;
    }

    void read() {
        const ssize_t count = ::read(STDIN_FILENO, buffer_.data(), buffer_.size());
        if (count > 0) {
            frames_.add(std::string_view(buffer_.data(), static_cast<std::size_t>(count)));
            while (auto frame = frames_.next()) session_.receive(std::move(*frame));
        } else if (count == 0) {
            at_end_ = true;
        } else if (errno != EINTR && errno != EAGAIN) {
            log_line("standard input cannot be read");
            failed_ = true;
        }
    }

    // False where the client's process has gone.
    bool wait() {
        while (!is_readable(kAliveCheckMilliseconds)) {
            const std::int64_t process = session_.client_process() != 0 ? session_.client_process() : client_process_;
            if (process > 0 && ::kill(static_cast<pid_t>(process), 0) != 0 && errno == ESRCH) return false;
        }
        return true;
    }

    bool write() {
        if (output_.text().empty()) return true;
        return output_.write({});
    }

    int ended() {
        if (output_.state() == Output::State::failed) {
            log_line("standard output cannot be written: " + output_.failure());
            return kFailed;
        }
        return end_of_input();
    }

    int end_of_input() {
        if (!frames_.between_messages()) log_line("the input ends within a message");
        return session_.is_shut_down() ? 0 : 1;
    }

    Session session_;
    std::int64_t client_process_;
    FrameReader frames_;
    Output output_;
    std::array<char, std::size_t{64} << 10U> buffer_{};
    Clock::time_point told_ = Clock::now();
    bool at_end_ = false;
    bool failed_ = false;
};

}  // namespace

int serve(WorkspaceOptions options, std::int64_t client_process) {
    const auto server = std::make_unique<Server>(std::move(options), client_process);
    return server->run();
}

}  // namespace grainside::tools::edit
