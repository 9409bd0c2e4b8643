// The HTTP side of the desk: a server on 127.0.0.1 that no client can hold up. The only file that knows the library
// (cpp-httplib 0.11, which parses and writes HTTP/1.1).
//
// What the library leaves open is bounded here: a connection carries one request and is closed; its head is read
// whole, at most kMostHeadBytes, before the library sees a byte of it; head and body have to arrive within
// kArrivalSeconds together, whatever the pace; a body states its length, and whether it may be as long as that is
// asked before any of it is read. kMostConnections are served at once; one more closes the one that has been waiting
// longest for its request, so idle and slow clients never keep others out.
#ifndef GRAINSIDE_TOOLS_DESK_DESK_SERVER_H
#define GRAINSIDE_TOOLS_DESK_DESK_SERVER_H

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>

#include "desk/http_exchange.h"

namespace grainside::desk {

inline constexpr std::size_t kMostHeadBytes = std::size_t{16} << 10;
inline constexpr std::size_t kMostTargetBytes = std::size_t{2} << 10;  // path and query, as sent
inline constexpr std::size_t kMostConnections = 64;
inline constexpr int kArrivalSeconds = 10;
inline constexpr int kAnswerSeconds = 30;

// Both are called from several threads at once.
struct DeskHandlers {
    // Asked before a body is read (the request has none yet): an answer refuses it.
    std::function<std::optional<HttpAnswer>(const HttpRequest&)> guard;
    std::function<HttpAnswer(const HttpRequest&)> answer;
};

class DeskServer {
public:
    explicit DeskServer(DeskHandlers handlers);
    ~DeskServer();
    DeskServer(const DeskServer&) = delete;
    DeskServer& operator=(const DeskServer&) = delete;

    // Takes `port` of 127.0.0.1, or any free one where that is 0; gives the port, or nothing where it cannot be had.
    std::optional<int> bind(int port);
    // Serves until `stop`. REQUIRES: bound.
    void serve();
    // From any thread. Requests that have arrived are answered.
    void stop();

private:
    class Http;
    std::unique_ptr<Http> http_;
};

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_DESK_SERVER_H
