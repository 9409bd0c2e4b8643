#include "desk/desk_guard.h"

#include <algorithm>
#include <charconv>
#include <string>
#include <string_view>
#include <utility>

#include "desk/desk_error.h"

namespace grainside::desk {
namespace {

constexpr std::string_view kClosedPage =
    "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>The desk is closed here</title></head>\n"
    "<body><h1>The desk is closed here</h1>\n"
    "<p>This address opens the desk once, and only in the browser that used it first. Go to the terminal in which "
    "<code>grainside desk</code> runs, press Enter, and open the new address that it prints.</p></body></html>\n";

// Nothing where it is no plain number.
std::optional<std::size_t> number_of(std::string_view text) {
    std::size_t number = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (text.empty() || fault != std::errc() || end != text.data() + text.size()) return std::nullopt;
    return number;
}

std::string_view media_type(std::string_view content_type) {
    return content_type.substr(0, content_type.find_first_of("; \t"));
}

std::optional<HttpAnswer> refused(int status, std::string code, std::string message) {
    return error_answer({status, std::move(code), std::move(message)});
}

// The body, by what the head says of it.
std::optional<HttpAnswer> check_body(const HttpRequest& head) {
    const bool picture = head.path == "/picture";
    const std::string_view type = media_type(head.header("content-type"));
    if (picture ? !type.starts_with("image/") : type != "application/json") {
        return refused(403, "wrong-type",
                       picture ? "a picture is sent as image/*" : "this is sent as application/json");
    }
    if (!head.header("transfer-encoding").empty() || !head.header("content-encoding").empty()) {
        return refused(411, "no-length", "a body is sent as it is, with its length stated");
    }
    const std::optional<std::size_t> length = number_of(head.header("content-length"));
    if (!length) return refused(411, "no-length", "the length of the body is not stated");
    if (*length > (picture ? kMostPictureBytes : kMostBodyBytes)) {
        return refused(413, "too-large", picture ? "a picture has at most 20 MiB" : "this is more than 4 MiB");
    }
    return std::nullopt;
}

}  // namespace

std::optional<HttpAnswer> DeskGuard::check(const HttpRequest& head) {
    const std::string port = ':' + std::to_string(port_);
    const std::string_view host = head.header("host");
    if (host != "127.0.0.1" + port && host != "localhost" + port) {
        return refused(403, "foreign-host", "the desk answers to its own address only");
    }
    const std::string_view site = head.header("sec-fetch-site");
    const bool opens = head.method == "GET" && head.path == "/" && head.query.contains("key");
    if (!site.empty() && site != "same-origin" && site != "none") {
        return refused(403, "foreign-page", "the desk answers to its own page only");
    }
    if (head.method != "GET" && head.method != "POST") {
        return refused(405, "no-such-method", "the desk knows GET and POST only");
    }
    const std::string_view origin = head.header("origin");
    const bool own = origin == "http://" + std::string(host);
    if (head.method == "POST" ? !own : !(origin.empty() || own)) {
        return refused(403, "foreign-page", "the desk answers to its own page only");
    }
    if (opens) return open(head);
    if (!has_session(head)) {
        if (head.path != "/") return refused(403, "no-session", "this browser has not opened the desk");
        return HttpAnswer{403, "text/html; charset=utf-8", std::string(kClosedPage)};
    }
    if (head.method == "POST") return check_body(head);
    // Nothing reads it, and what is not read might be taken for a request.
    const bool has_body = !head.header("transfer-encoding").empty() ||
                          (!head.header("content-length").empty() && head.header("content-length") != "0");
    if (has_body) return refused(400, "body-of-get", "a GET has no body");
    return std::nullopt;
}

std::optional<HttpAnswer> DeskGuard::open(const HttpRequest& head) {
    const std::optional<std::string> session = keys_.open(head.parameter("key"));
    if (!session) {
        // A page that is opened again from its history has its session still.
        if (has_session(head)) return HttpAnswer{303, "text/plain; charset=utf-8", {}, {{"Location", "/"}}};
        return HttpAnswer{403, "text/html; charset=utf-8", std::string(kClosedPage)};
    }
    const std::string cookie = "desk-" + std::to_string(port_) + '=' + *session + "; HttpOnly; SameSite=Strict; Path=/";
    return HttpAnswer{303, "text/plain; charset=utf-8", {}, {{"Location", "/"}, {"Set-Cookie", cookie}}};
}

bool DeskGuard::has_session(const HttpRequest& head) const {
    const std::string wanted = "desk-" + std::to_string(port_) + '=';
    const auto [first, last] = head.headers.equal_range("cookie");
    return std::any_of(first, last, [&](const auto& header) {
        std::string_view left = header.second;
        while (!left.empty()) {
            const std::size_t end = std::min(left.find(';'), left.size());
            std::string_view cookie = left.substr(0, end);
            left.remove_prefix(std::min(end + 1, left.size()));
            cookie.remove_prefix(std::min(cookie.find_first_not_of(' '), cookie.size()));
            if (cookie.starts_with(wanted) && keys_.is_open(cookie.substr(wanted.size()))) return true;
        }
        return false;
    });
}

void add_safe_headers(HttpAnswer& answer) {
    static constexpr std::pair<const char*, const char*> kHeaders[] = {
        {"Content-Security-Policy",
         "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; "
         "form-action 'none'; base-uri 'none'; frame-ancestors 'none'"},
        {"X-Content-Type-Options", "nosniff"},
        {"Referrer-Policy", "no-referrer"},
        {"Cache-Control", "no-store"},
        {"Cross-Origin-Opener-Policy", "same-origin"},
        {"Cross-Origin-Resource-Policy", "same-origin"},
    };
    for (const auto& safe : kHeaders) {
        const bool there = std::any_of(answer.headers.begin(), answer.headers.end(),
                                       [&](const auto& header) { return header.first == safe.first; });
        if (!there) answer.headers.emplace_back(safe.first, safe.second);
    }
}

}  // namespace grainside::desk
