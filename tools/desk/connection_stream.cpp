#include "desk/connection_stream.h"

#include <poll.h>
#include <sys/socket.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <string_view>

namespace grainside::desk {
namespace {

using Clock = ConnectionStream::Clock;

constexpr std::string_view kHeadEnd = "\r\n\r\n";
constexpr auto kFinishTime = std::chrono::seconds(1);
constexpr long kMostUnread = 64L << 20;  // what a picture that is somewhat too large may have

// Whether `event` comes before `until`.
bool wait_for(int socket, short event, Clock::time_point until) {
    for (;;) {
        const auto left = std::chrono::ceil<std::chrono::milliseconds>(until - Clock::now()).count();
        if (left <= 0) return false;
        pollfd asked{socket, event, 0};
        const int seen = ::poll(&asked, 1, static_cast<int>(std::min<long long>(left, 60'000)));
        if (seen > 0) return true;
        if (seen < 0 && errno != EINTR) return false;
    }
}

}  // namespace

bool ConnectionStream::read_head(std::size_t most) {
    std::array<char, 4096> block{};
    for (;;) {
        const long count = receive(block.data(), block.size(), arrived_by_);
        if (count <= 0) return false;
        const std::size_t seen = kept_.size();
        kept_.append(block.data(), static_cast<std::size_t>(count));
        const std::size_t end = kept_.find(kHeadEnd, seen < kHeadEnd.size() ? 0 : seen - kHeadEnd.size() + 1);
        if (std::min(end, kept_.size()) > most) {
            too_long_ = true;
            return false;
        }
        if (end == std::string::npos) continue;
        head_end_ = end + kHeadEnd.size();
        return true;
    }
}

long ConnectionStream::read(char* to, std::size_t size) {
    if (given_ < kept_.size()) {
        const std::size_t count = kept_.copy(to, size, given_);
        given_ += count;
        return static_cast<long>(count);
    }
    return receive(to, size, arrived_by_);
}

long ConnectionStream::receive(char* to, std::size_t size, Clock::time_point until) {
    for (;;) {
        if (!wait_for(socket_, POLLIN, until)) return -1;
        const ssize_t count = ::recv(socket_, to, size, MSG_DONTWAIT);
        if (count >= 0) return count;
        if (errno != EINTR && errno != EAGAIN) return -1;
    }
}

long ConnectionStream::write(const char* from, std::size_t size) {
    for (;;) {
        if (!wait_for(socket_, POLLOUT, answer_by_)) return -1;
        const ssize_t count = ::send(socket_, from, size, MSG_DONTWAIT | MSG_NOSIGNAL);
        if (count >= 0) return count;
        if (errno != EINTR && errno != EAGAIN) return -1;
    }
}

void ConnectionStream::finish() {
    ::shutdown(socket_, SHUT_WR);
    std::array<char, 16384> unread{};
    const auto until = Clock::now() + kFinishTime;
    for (long passed = 0; passed < kMostUnread;) {
        const long count = receive(unread.data(), unread.size(), until);
        if (count <= 0) return;
        passed += count;
    }
}

}  // namespace grainside::desk
