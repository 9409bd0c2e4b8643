// Which requests the desk answers at all. Pure but for the keys; thread-safe.
#ifndef GRAINSIDE_TOOLS_DESK_DESK_GUARD_H
#define GRAINSIDE_TOOLS_DESK_DESK_GUARD_H

#include <cstddef>
#include <optional>

#include "desk/desk_keys.h"
#include "desk/http_exchange.h"

namespace grainside::desk {

inline constexpr std::size_t kMostBodyBytes = std::size_t{4} << 20;
inline constexpr std::size_t kMostPictureBytes = std::size_t{20} << 20;

class DeskGuard {
public:
    // `keys` outlives the guard.
    DeskGuard(DeskKeys& keys, int port) : keys_(keys), port_(port) {}

    // Asked with the head of a request, before its body is read. An answer refuses it, or, for an address with a key,
    // opens a session. Nothing: it may be answered.
    // Every program of this machine, and every page in its browsers, can reach the port. So a request has to name this
    // machine as its host (a name of somebody else's that leads here would make that one's page our neighbour), must
    // not come from another page, and has to show the session that only a key opens.
    std::optional<HttpAnswer> check(const HttpRequest& head);

private:
    std::optional<HttpAnswer> open(const HttpRequest& head);
    bool has_session(const HttpRequest& head) const;

    DeskKeys& keys_;
    int port_;
};

// The headers of every answer; those that `answer` has already stay.
void add_safe_headers(HttpAnswer& answer);

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_DESK_GUARD_H
