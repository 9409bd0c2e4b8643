#include "desk/desk_keys.h"

#include <sys/random.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstddef>
#include <system_error>

namespace grainside::desk {
namespace {

constexpr std::size_t kSecretBytes = 16;
constexpr std::size_t kMostSessions = 16;

std::string new_secret() {
    std::array<unsigned char, kSecretBytes> bytes{};
    // Up to 256 bytes come whole (getrandom(2)); a signal may come before the pool is ready.
    while (::getrandom(bytes.data(), bytes.size(), 0) != static_cast<ssize_t>(bytes.size())) {
        if (errno != EINTR) throw std::system_error(errno, std::generic_category(), "no random numbers");
    }
    constexpr char kDigits[] = "0123456789abcdef";
    std::string text;
    for (const unsigned char byte : bytes) {
        text += kDigits[byte >> 4U];
        text += kDigits[byte & 0xFU];
    }
    return text;
}

}  // namespace

bool same_secret(std::string_view a, std::string_view b) noexcept {
    if (a.size() != b.size()) return false;
    int differs = 0;
    for (std::size_t i = 0; i < a.size(); ++i) differs |= a[i] ^ b[i];
    return differs == 0;
}

std::string DeskKeys::new_key() {
    const std::lock_guard lock(mutex_);
    return key_ = new_secret();
}

std::optional<std::string> DeskKeys::open(std::string_view key) {
    const std::lock_guard lock(mutex_);
    if (key_.empty() || !same_secret(key, key_)) return std::nullopt;
    key_.clear();
    if (sessions_.size() == kMostSessions) sessions_.erase(sessions_.begin());
    return sessions_.emplace_back(new_secret());
}

bool DeskKeys::is_open(std::string_view session) const {
    const std::lock_guard lock(mutex_);
    return std::any_of(sessions_.begin(), sessions_.end(),
                       [&](const std::string& known) { return same_secret(session, known); });
}

}  // namespace grainside::desk
