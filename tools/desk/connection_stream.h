// One connection's bytes, with an end to every wait.
#ifndef GRAINSIDE_TOOLS_DESK_CONNECTION_STREAM_H
#define GRAINSIDE_TOOLS_DESK_CONNECTION_STREAM_H

#include <chrono>
#include <cstddef>
#include <string>

namespace grainside::desk {

// Not thread-safe; does not own the socket.
class ConnectionStream {
public:
    using Clock = std::chrono::steady_clock;

    // Reading gives up at `arrived_by`.
    ConnectionStream(int socket, Clock::time_point arrived_by) : socket_(socket), arrived_by_(arrived_by) {}

    // Reads until the empty line behind a request's head (RFC 9112, 2.1), and what came with it. False: the client
    // went, was too slow, or sent more than `most` bytes without one.
    bool read_head(std::size_t most);
    bool head_too_long() const noexcept { return too_long_; }
    // The head, its empty line included; what is put in its place is what `read` gives. REQUIRES: read_head gave true.
    std::string head() const { return kept_.substr(0, head_end_); }
    void replace_head(const std::string& head) { kept_.replace(0, head_end_, head); }

    // What read_head kept, then what comes; 0 at the end, -1 where nothing came in time.
    long read(char* to, std::size_t size);
    // -1 where the client does not take it in time.
    long write(const char* from, std::size_t size);
    // From now on `write` gives up at this time.
    void answer_by(Clock::time_point when) noexcept { answer_by_ = when; }

    // Says that nothing more is sent, and reads on for a moment: a socket that is closed with bytes unread takes the
    // answer away from a client that still sends.
    void finish();
    int socket() const noexcept { return socket_; }

private:
    long receive(char* to, std::size_t size, Clock::time_point until);

    int socket_;
    Clock::time_point arrived_by_;
    Clock::time_point answer_by_ = Clock::time_point::max();
    std::string kept_;
    std::size_t given_ = 0;  // of kept_
    std::size_t head_end_ = 0;
    bool too_long_ = false;
};

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_CONNECTION_STREAM_H
