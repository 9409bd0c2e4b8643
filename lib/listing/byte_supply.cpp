#include "listing/byte_supply.h"

#include <poll.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>

namespace grainside::listing {
namespace {

class DescriptorSupply final : public ByteSupply {
public:
    DescriptorSupply(int descriptor, bool owned) : descriptor_(descriptor), owned_(owned) {}
    ~DescriptorSupply() override {
        if (owned_) ::close(descriptor_);
    }

    std::size_t read(char* to, std::size_t room) override {
        for (;;) {
            if (!wait_or_woken()) {
                error_ = ECANCELED;
                return 0;
            }
            const ssize_t got = ::read(descriptor_, to, room);
            if (got >= 0) {
                taken_ += static_cast<std::uint64_t>(got);
                return static_cast<std::size_t>(got);
            }
            if (errno == EINTR) continue;
            if (errno == EAGAIN || errno == EWOULDBLOCK) {
                // Standard input may have been left non-blocking by whoever holds its other end.
                pollfd wait{descriptor_, POLLIN, 0};
                if (::poll(&wait, 1, -1) >= 0 || errno == EINTR) continue;
            }
            error_ = errno;
            return 0;
        }
    }

    int error() const noexcept override { return error_; }
    std::uint64_t bytes_taken() const noexcept override { return taken_; }
    std::size_t stated_size() const noexcept override {
        struct stat status {};
        if (::fstat(descriptor_, &status) != 0 || !S_ISREG(status.st_mode) || status.st_size <= 0) return 0;
        return static_cast<std::size_t>(status.st_size);
    }

    void wake_by(int descriptor) noexcept override { wake_ = descriptor; }
    bool may_wait() const noexcept override {
        pollfd now{descriptor_, POLLIN, 0};
        return ::poll(&now, 1, 0) == 0;
    }

private:
    // False where the wait was ended from outside.
    bool wait_or_woken() const noexcept {
        if (wake_ < 0) return true;
        std::array<pollfd, 2> wait = {pollfd{descriptor_, POLLIN, 0}, pollfd{wake_, POLLIN, 0}};
        while (::poll(wait.data(), wait.size(), -1) < 0 && errno == EINTR) {
        }
        return wait[1].revents == 0;
    }

    int descriptor_;
    bool owned_;
    int wake_ = -1;  // -1 = nothing ends a wait
    int error_ = 0;
    std::uint64_t taken_ = 0;
};

class MemorySupply final : public ByteSupply {
public:
    explicit MemorySupply(std::string_view bytes) : rest_(bytes), size_(bytes.size()) {}

    std::size_t read(char* to, std::size_t room) override {
        const std::size_t count = rest_.copy(to, room);
        rest_.remove_prefix(count);
        return count;
    }

    int error() const noexcept override { return 0; }
    std::uint64_t bytes_taken() const noexcept override { return size_ - rest_.size(); }
    std::size_t stated_size() const noexcept override { return size_; }
    void wake_by(int /*descriptor*/) noexcept override {}

private:
    std::string_view rest_;
    std::size_t size_;
};

}  // namespace

std::unique_ptr<ByteSupply> descriptor_supply(int descriptor, bool owned) {
    return std::make_unique<DescriptorSupply>(descriptor, owned);
}

std::unique_ptr<ByteSupply> memory_supply(std::string_view bytes) {
    return std::make_unique<MemorySupply>(bytes);
}

}  // namespace grainside::listing
