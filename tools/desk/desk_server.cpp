#include "desk/desk_server.h"

#include <arpa/inet.h>
#include <httplib.h>
#include <netinet/in.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <exception>
#include <mutex>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "desk/connection_stream.h"
#include "desk/request_head.h"

namespace grainside::desk {
namespace {

using Clock = ConnectionStream::Clock;

constexpr const char* kLoopback = "127.0.0.1";
// The library asks for five, and a page may ask for more files at once.
constexpr int kWaitingToBeAccepted = 128;

// The sockets whose request has not arrived, the longest wait first.
class Waiting {
public:
    void add(int socket) {
        const std::lock_guard lock(mutex_);
        if (owed_ > 0) {
            --owed_;
            ::shutdown(socket, SHUT_RDWR);
            return;
        }
        sockets_.push_back(socket);
    }
    // REQUIRES: before the socket is closed, whose number another one may get then.
    void remove(int socket) {
        const std::lock_guard lock(mutex_);
        std::erase(sockets_, socket);
    }
    // Where none is waiting yet, because connections come faster than threads begin with them, the next one that does.
    void drop_first() {
        const std::lock_guard lock(mutex_);
        if (sockets_.empty()) {
            ++owed_;
            return;
        }
        ::shutdown(sockets_.front(), SHUT_RDWR);
        sockets_.erase(sockets_.begin());
    }
    void drop_all() {
        const std::lock_guard lock(mutex_);
        for (const int socket : sockets_) ::shutdown(socket, SHUT_RDWR);
        sockets_.clear();
    }

private:
    std::mutex mutex_;
    std::vector<int> sockets_;
    std::size_t owed_ = 0;
};

// The library's threads, with room made for a new connection where all of them have one.
class Connections final : public httplib::TaskQueue {
public:
    explicit Connections(Waiting& waiting) : waiting_(waiting), threads_(kMostConnections) {}

    void enqueue(std::function<void()> serve) override {
        if (++busy_ > kMostConnections) waiting_.drop_first();
        threads_.enqueue([this, serve = std::move(serve)] {
            serve();
            --busy_;
        });
    }
    void shutdown() override {
        waiting_.drop_all();
        threads_.shutdown();
    }

private:
    Waiting& waiting_;
    std::atomic<std::size_t> busy_{0};
    httplib::ThreadPool threads_;
};

class LibraryStream final : public httplib::Stream {
public:
    explicit LibraryStream(ConnectionStream& stream) : stream_(stream) {}

    bool is_readable() const override { return true; }
    bool is_writable() const override { return true; }
    ssize_t read(char* to, std::size_t size) override { return stream_.read(to, size); }
    ssize_t write(const char* from, std::size_t size) override { return stream_.write(from, size); }
    void get_remote_ip_and_port(std::string& ip, int& port) const override { name(ip, port); }
    void get_local_ip_and_port(std::string& ip, int& port) const override { name(ip, port); }
    socket_t socket() const override { return stream_.socket(); }

private:
    static void name(std::string& ip, int& port) {
        ip = kLoopback;
        port = 0;
    }
    ConnectionStream& stream_;
};

// The connection that this thread of the library serves: its handlers are given the request only.
thread_local int served_socket = -1;

void refuse(ConnectionStream& stream, std::string_view status) {
    const std::string answer = "HTTP/1.1 " + std::string(status) + "\r\nContent-Length: 0\r\nConnection: close\r\n\r\n";
    stream.answer_by(Clock::now() + std::chrono::seconds(1));
    for (std::size_t sent = 0; sent < answer.size();) {
        const long count = stream.write(answer.data() + sent, answer.size() - sent);
        if (count <= 0) return;
        sent += static_cast<std::size_t>(count);
    }
}

HttpRequest request_of(const httplib::Request& from) {
    HttpRequest request;
    request.method = from.method;
    request.path = from.path;
    for (const auto& [name, value] : from.params) request.query.try_emplace(name, value);
    for (const auto& [name, value] : from.headers) {
        std::string lower = name;
        std::transform(lower.begin(), lower.end(), lower.begin(),
                       [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
        request.headers.emplace(std::move(lower), value);
    }
    return request;
}

void give(HttpAnswer&& answer, httplib::Response& to) {
    to.status = answer.status;
    for (const auto& [name, value] : answer.headers) to.set_header(name, value);
    to.set_header("Content-Type", answer.type);
    to.body = std::move(answer.body);
}

}  // namespace

class DeskServer::Http final : public httplib::Server {
public:
    explicit Http(DeskHandlers handlers) : handlers_(std::move(handlers)) {
        new_task_queue = [this] { return new Connections(waiting_); };
        // Not SO_REUSEPORT, the library's own choice: by it two programs share a port and neither knows.
        set_socket_options([](socket_t socket) {
            const int yes = 1;
            ::setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
        });
        set_pre_routing_handler([this](const httplib::Request& from, httplib::Response& to) {
            std::optional<HttpAnswer> refused = handlers_.guard(request_of(from));
            if (!refused) return HandlerResponse::Unhandled;
            give(std::move(*refused), to);
            return HandlerResponse::Handled;
        });
        const auto answer = [this](const httplib::Request& from, httplib::Response& to) {
            waiting_.remove(served_socket);  // it has arrived
            HttpRequest request = request_of(from);
            request.body = from.body;
            give(handlers_.answer(request), to);
        };
        Get(".*", answer);
        Post(".*", answer);
        set_exception_handler([](const httplib::Request&, httplib::Response& to, const std::exception_ptr&) {
            to.status = 500;
            to.set_content(R"({"error":{"code":"internal","message":"the desk could not do this"}})",
                           "application/json; charset=utf-8");
        });
    }

    std::optional<int> bind(int port) {
        const int bound = port == 0 ? bind_to_any_port(kLoopback) : bind_to_port(kLoopback, port) ? port : -1;
        if (bound <= 0) return std::nullopt;
        ::listen(svr_sock_, kWaitingToBeAccepted);
        return bound;
    }

private:
    bool process_and_close_socket(socket_t socket) override {
        ConnectionStream stream(socket, Clock::now() + std::chrono::seconds(kArrivalSeconds));
        served_socket = socket;
        waiting_.add(socket);
        const bool arrived = stream.read_head(kMostHeadBytes);
        if (arrived) {
            answer(stream);
        } else if (stream.head_too_long()) {
            refuse(stream, "431 Request Header Fields Too Large");
        }
        if (arrived || stream.head_too_long()) {
            waiting_.remove(socket);
            waiting_.add(socket);  // for the client to go, and behind those that wait for an answer
            stream.finish();
        }
        waiting_.remove(socket);
        ::close(socket);
        return arrived;
    }

    void answer(ConnectionStream& stream) {
        std::string head = stream.head();
        switch (trim_head(head, kMostTargetBytes)) {
            case HeadFault::none:
                break;
            case HeadFault::malformed:
                refuse(stream, "400 Bad Request");
                return;
            case HeadFault::target_too_long:
                refuse(stream, "414 URI Too Long");
                return;
        }
        stream.replace_head(head);
        stream.answer_by(Clock::now() + std::chrono::seconds(kArrivalSeconds + kAnswerSeconds));
        LibraryStream library_stream(stream);
        bool closed = true;
        process_request(library_stream, true, closed, nullptr);
    }

    DeskHandlers handlers_;
    Waiting waiting_;
};

DeskServer::DeskServer(DeskHandlers handlers) : http_(std::make_unique<Http>(std::move(handlers))) {}
DeskServer::~DeskServer() = default;

std::optional<int> DeskServer::bind(int port) {
    return http_->bind(port);
}
void DeskServer::serve() {
    http_->listen_after_bind();
}
void DeskServer::stop() {
    http_->stop();
}

}  // namespace grainside::desk
