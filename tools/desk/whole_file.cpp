#include "desk/whole_file.h"

#include <fcntl.h>
#include <sys/stat.h>

#include <array>
#include <cerrno>
#include <string_view>

namespace grainside::desk {

OwnedDescriptor open_regular(int folder, const std::string& file) {
    OwnedDescriptor opened(::openat(folder, file.c_str(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC | O_NOCTTY));
    struct stat status {};
    if (!opened.is_open() || ::fstat(opened.get(), &status) != 0) return OwnedDescriptor();
    if (S_ISREG(status.st_mode)) return opened;
    errno = ENOENT;
    return OwnedDescriptor();
}

std::optional<std::string> read_all(int descriptor, std::size_t most) {
    std::string bytes;
    std::array<char, 65536> block{};
    while (bytes.size() <= most) {
        const ssize_t count = ::read(descriptor, block.data(), std::min(block.size(), most + 1 - bytes.size()));
        if (count == 0) break;
        if (count > 0) {
            bytes.append(block.data(), static_cast<std::size_t>(count));
        } else if (errno != EINTR) {
            return std::nullopt;
        }
    }
    return bytes;
}

bool write_all(int descriptor, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t count = ::write(descriptor, bytes.data(), bytes.size());
        if (count >= 0) {
            bytes.remove_prefix(static_cast<std::size_t>(count));
        } else if (errno != EINTR) {
            return false;
        }
    }
    return true;
}

}  // namespace grainside::desk
