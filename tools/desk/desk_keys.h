// Who may use the desk: keys that open it once, and the sessions that they opened. Thread-safe.
#ifndef GRAINSIDE_TOOLS_DESK_DESK_KEYS_H
#define GRAINSIDE_TOOLS_DESK_DESK_KEYS_H

#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace grainside::desk {

class DeskKeys {
public:
    // 128 random bits as 32 hexadecimal digits; good for one `open`. One that was made before and not used is void.
    std::string new_key();
    // The session that `key` opens; nothing where it is not the one that is waited for.
    std::optional<std::string> open(std::string_view key);
    bool is_open(std::string_view session) const;

private:
    mutable std::mutex mutex_;
    std::string key_;                    // empty: none is waited for
    std::vector<std::string> sessions_;  // at most 16, the oldest are closed for new ones
};

// Takes the same time wherever the two differ; not where their lengths do.
bool same_secret(std::string_view a, std::string_view b) noexcept;

}  // namespace grainside::desk

#endif  // GRAINSIDE_TOOLS_DESK_DESK_KEYS_H
